// What lies on this phone and is not sent yet, in the order it was written. IndexedDB is there over
// plain http too; nothing else here may ask for more than that.
const STORE = "unsent";

function open() {
  return new Promise((done, failed) => {
    const asked = indexedDB.open("sootline", 1);
    asked.onupgradeneeded = () =>
      asked.result.createObjectStore(STORE, { keyPath: "place", autoIncrement: true });
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
}

// Ends once it is written: an answer before that could be lost with the power.
async function within(mode, act) {
  const base = await open();
  try {
    return await new Promise((done, failed) => {
      const turn = base.transaction(STORE, mode, { durability: "strict" });
      const asked = act(turn.objectStore(STORE));
      turn.oncomplete = () => done(asked.result);
      turn.onerror = turn.onabort = () => failed(turn.error);
    });
  } finally {
    base.close();
  }
}

export const keep = (item) => within("readwrite", (store) => store.put(item));
export const drop = (place) => within("readwrite", (store) => store.delete(place));
export const list = () => within("readonly", (store) => store.getAll());

export async function change(place, news) {
  const item = await within("readonly", (store) => store.get(place));
  if (item) await keep({ ...item, ...news });
}

// One name for this browser, so that the record can tell two phones of one person apart.
export function device() {
  let name = null;
  try {
    name = localStorage.getItem("device");
    if (!name) {
      name = `phone-${chance(4)}`;
      localStorage.setItem("device", name);
    }
  } catch {
    name = name || `phone-${chance(4)}`;
  }
  return name;
}

export function chance(bytes) {
  const drawn = crypto.getRandomValues(new Uint8Array(bytes));
  return Array.from(drawn, (one) => one.toString(16).padStart(2, "0")).join("");
}

// A moment with its offset, as this device's clock shows it.
export function stated(moment) {
  const two = (number) => String(Math.floor(Math.abs(number))).padStart(2, "0");
  const ahead = -moment.getTimezoneOffset();
  const there = new Date(moment.getTime() + ahead * 60000).toISOString().slice(0, 19);
  return `${there}${ahead < 0 ? "-" : "+"}${two(ahead / 60)}:${two(ahead % 60)}`;
}
