// Forms work without this file. With it, a form that finds no connection is kept on this phone, with
// the time and a key of its own, and goes out by itself later.
import { chance, device, drop, keep, stated } from "./kept.js";
import { led, reach, send } from "./sending.js";
import { aside, draw, tell, tidy } from "./unsent.js";

const EVERY_MS = 20000;

async function round() {
  await draw();
  await draw(await send(aside.dataset));
  aside.dataset.settled = "1";
}

function read(form, pressed) {
  const made = stated(new Date());
  const given = new FormData(form, pressed);
  given.delete("csrfmiddlewaretoken");
  const key = chance(16);
  for (const [name, value] of Object.entries({ key, made, device: device() })) given.set(name, value);
  const fields = [...given.entries()].filter(([, value]) => typeof value === "string" || value.size);
  const heading = document.querySelector("h1").textContent.trim();
  const title = form.dataset.title || [heading, pressed?.textContent.trim()].filter(Boolean).join(" · ");
  const typed = fields.map(([name, value]) => shown(form, name, value)).filter(Boolean);
  return { key, made, fields, typed, title, to: form.dataset.later, who: aside.dataset.who, state: "waits" };
}

// A field as the form shows it: its question, and the words of the answer that was chosen.
function shown(form, name, value) {
  const all = [...form.elements].filter((one) => one.name === name && one.type !== "hidden");
  const field = all.find((one) => one.value === value) || all[0];
  if (!field || value === "") return "";
  const text = (one) => one?.textContent.trim() || "";
  const own = text(field.labels?.[0]) || field.getAttribute("aria-label");
  if (field.type === "radio" || field.type === "checkbox") {
    return `${text(field.closest("fieldset")?.querySelector("legend"))}: ${own}`;
  }
  return `${own}: ${text(field.selectedOptions?.[0]) || value.name || value}`;
}

async function sent(event) {
  const form = event.target;
  if (!form.matches("form[data-later]")) return;
  event.preventDefault();
  if (form.dataset.going) return;
  form.dataset.going = "1";
  const item = read(form, event.submitter);
  try {
    item.place = await keep(item);
  } catch {
    // No room, or no store in this browser: then it goes out as if this file were not there.
    delete form.dataset.going;
    form.elements.key.value = item.key;
    tell([aside.dataset.lost]);
    form.submit();
    return;
  }
  try {
    await go(form, item);
  } catch {
    form.reset();
    await draw("waits");
    aside.scrollIntoView({ block: "center" });
  } finally {
    delete form.dataset.going;
  }
}

// Sends a form to where it goes without this file, and shows what comes back.
async function go(form, item) {
  const body = new FormData();
  for (const [name, value] of item.fields) {
    if (!["made", "device"].includes(name)) body.append(name, value);
  }
  body.set("csrfmiddlewaretoken", form.elements.csrfmiddlewaretoken.value);
  const answer = await reach(form.action, { method: "POST", body });
  const next = led(answer);
  if (next.startsWith(aside.dataset.signIn)) return location.assign(next);
  if (next) {
    await drop(item.place);
    return location.assign(next);
  }
  const page = await answer.text();
  const lost = answer.status >= 500 || (answer.status === 403 && !page.includes('name="_'));
  if (lost) return round();
  await drop(item.place);
  document.open();
  document.write(page);
  document.close();
}

document.addEventListener("submit", sent);
document.addEventListener("later-again", round);
document.addEventListener("later-sent", ({ detail }) => {
  tell([...detail.said.map((one) => `${aside.dataset.sent} ${one}`), ...detail.asked]);
});
window.addEventListener("online", round);
window.addEventListener("pageshow", round);
document.addEventListener("visibilitychange", () => document.hidden || round());
setInterval(() => aside.hidden || round(), EVERY_MS);
await tidy();
await round();
