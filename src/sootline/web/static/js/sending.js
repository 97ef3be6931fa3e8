// Sends what lies on this phone, in its order, once there is a connection and somebody is signed in.
import { change, drop, list, stated } from "./kept.js";

const ASKED = { "X-Later": "1" };
const PATIENCE_MS = 15000;
let busy = false;

export function reach(address, given = {}) {
  const patience = new AbortController();
  const end = setTimeout(() => patience.abort(), PATIENCE_MS);
  const headers = { ...ASKED, ...given.headers };
  return fetch(address, { ...given, headers, cache: "no-store", signal: patience.signal }).finally(
    () => clearTimeout(end),
  );
}

// Where an answer sends us, if it sends us anywhere.
export const led = (answer) => answer.headers.get("X-Next") || "";

// Returns what to say of the whole: nothing, or why it waits.
export async function send(line) {
  if (busy) return "";
  busy = true;
  try {
    const items = (await list()).filter((one) => one.state === "waits" || one.state === "other");
    return items.length ? await sendAll(items, line) : "";
  } catch {
    return "waits";
  } finally {
    busy = false;
  }
}

async function sendAll(items, line) {
  const answer = await reach(line.now);
  if (led(answer)) return "signed-out";
  if (!answer.ok) return "waits";
  const { token, who } = await answer.json();
  for (const item of items) {
    if (item.who !== who) await change(item.place, { state: "other" });
    else if (!(await sendOne(item, token))) return "waits";
  }
  return "";
}

// Whether the next one may go.
async function sendOne(item, token) {
  const body = new FormData();
  for (const [name, value] of item.fields) body.append(name, value);
  body.set("sent", stated(new Date()));
  const headers = { "X-CSRFToken": token };
  const answer = await reach(item.to, { method: "POST", body, headers });
  if (led(answer) || answer.status >= 500 || answer.status === 429) return false;
  const told = answer.headers.get("Content-Type").includes("json") ? await answer.json() : null;
  if (answer.ok && told) {
    await drop(item.place);
    document.dispatchEvent(new CustomEvent("later-sent", { detail: told }));
  } else if (told) {
    await change(item.place, { state: "refused", faults: told.faults });
  } else {
    const asks = answer.status === 403 && (await answer.text()).includes('name="_begun"');
    await change(item.place, { state: asks ? "asks" : "refused", faults: [] });
  }
  return true;
}
