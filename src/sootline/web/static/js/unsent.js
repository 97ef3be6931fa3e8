// Shows in one line what is not sent yet, and lists it with everything that was typed.
import { change, drop, list, stated } from "./kept.js";

export const aside = document.getElementById("unsent");
const words = aside.dataset;
const part = (name) => aside.querySelector(`.unsent__${name}`);

export async function draw(why = "") {
  const items = await list();
  const open = items.filter((one) => one.state !== "off");
  aside.hidden = items.length === 0;
  const line = open.length === 1 ? words.one : words.many.replace("##", open.length);
  part("line").textContent = open.length ? line : words.off;
  part("how").replaceChildren(...how(why, open));
  part("list").replaceChildren(...items.map(row));
}

function how(why, open) {
  if (why === "signed-out") {
    const way = make("a", words.signedOut);
    way.href = `${words.signIn}?next=${encodeURIComponent(location.pathname)}`;
    return [way];
  }
  return open.some((one) => one.state === "waits") ? [words.waits] : [];
}

function row(item) {
  const line = make("li");
  line.append(make("b", `${item.title} · ${item.made.slice(11, 16)}`));
  line.append(make("small", item.typed.join(" · ")));
  line.append(...said(item), ...buttons(item));
  return line;
}

function said(item) {
  const texts = {
    waits: [words.waits],
    refused: [words.refused, ...(item.faults || [])],
    asks: [words.asks],
    other: [words.other.replace("##", item.who)],
    off: [words.off],
  }[item.state];
  return texts.map((text) => make("p", text));
}

function* buttons(item) {
  if (item.state === "asks") yield press(words.name, () => byName(item));
  if (item.state === "refused") yield press(words.again, () => set(item, { state: "waits" }));
  const off = item.state === "off";
  yield press(off ? words.putBack : words.takeOff, () => set(item, { state: off ? "waits" : "off" }));
}

async function set(item, news) {
  await change(item.place, news);
  await draw();
  if (news.state === "waits") document.dispatchEvent(new Event("later-again"));
}

// A station's device asks a name and a PIN on pages of their own; what was typed goes with them.
function byName(item) {
  const form = make("form");
  form.method = "post";
  form.action = item.to;
  const sent = ["sent", stated(new Date())];
  const token = ["csrfmiddlewaretoken", words.token];
  const texts = item.fields.filter(([, value]) => typeof value === "string");
  for (const [name, value] of [...texts, sent, token]) {
    const field = make("input");
    Object.assign(field, { type: "hidden", name, value });
    form.append(field);
  }
  document.body.append(form);
  form.submit();
}

// What came in by a page that asked a name is named in the address it ended at.
export async function tidy() {
  const kept = new URLSearchParams(location.search).get("kept");
  for (const item of await list()) {
    if (item.key === kept || item.state === "off") await drop(item.place);
  }
}

export function tell(texts, link = "") {
  const box = make("div");
  box.className = "said";
  box.setAttribute("role", "status");
  for (const text of texts) {
    const line = make("p", text);
    box.append(line);
  }
  if (link) box.append(link);
  aside.before(box);
}

function press(text, act) {
  const button = make("button", text);
  button.type = "button";
  button.className = "button button--second button--small";
  button.addEventListener("click", act);
  return button;
}

function make(name, text = "") {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}
