// What every page does: it hears of changes over a line (web socket), shows its parts anew without losing what is
// being typed, and sends forms so that nothing is lost while the program cannot be reached.
const html = document.documentElement;
html.classList.add("js");
const banner = document.getElementById("line");
const heard = new Set();
const waitingKey = "graspwright-waiting";
let socket, version = html.dataset.version, wait = 250, fetching = false, again = false, forced;

/** Hears what the program says: handlers get the parsed message. */
export function hear(handler) {
  heard.add(handler);
  if (html.dataset.line === "open") queueMicrotask(() => handler({ say: "open" })); // a script that comes late has missed it
}
/** Sends a question; false = there is no line. */
export function ask(question) {
  if (socket?.readyState !== WebSocket.OPEN) return false;
  socket.send(JSON.stringify(question));
  return true;
}

function connect() {
  socket = new WebSocket(`ws://${location.host}/line?page=${html.dataset.page}`);
  socket.onopen = async () => {
    wait = 250;
    await sendWaiting();
    html.dataset.line = "open";
    banner.hidden = true;
    for (const handler of heard) handler({ say: "open" });
  };
  socket.onmessage = (e) => {
    const message = JSON.parse(e.data);
    if (message.say === "changed") {
      if (version !== message.version) refresh();
      version = message.version;
    }
    if (message.say === "work") far(message);
    for (const handler of heard) handler(message);
  };
  socket.onclose = () => {
    if (html.dataset.line !== "gone") {
      html.dataset.line = "gone";
      for (const handler of heard) handler({ say: "gone" });
    }
    tell();
    setTimeout(connect, wait);
    wait = Math.min(wait * 2, 4000);
  };
}

function tell() {
  const count = waiting().length;
  banner.textContent = `The program cannot be reached just now. ${count > 0 ? `${count} change${count > 1 ? "s are" : " is"} kept here and go${count > 1 ? "" : "es"} in when it is back.` : "What you type is kept here."}`;
  banner.hidden = false;
}

/* How far long works are. What is shown of a work on the way is looked at again now and then. */
let looked = 0;
function far(work) {
  const shown = document.querySelectorAll(`[data-work="${CSS.escape(work.key)}"]`);
  for (const one of shown) {
    delete one.dataset.seconds;
    one.querySelector("[data-far]").textContent = one.querySelector("button")?.disabled ? "stopping …" : work.words;
    const bar = one.querySelector("progress");
    if (work.all > 0) { bar.max = work.all; bar.value = work.done; }
  }
  const soFar = document.querySelector(`[data-so-far="${CSS.escape(work.key)}"]`) !== null;
  if (work.goes && (shown.length === 0 || soFar) && performance.now() - looked > 1200) { looked = performance.now(); refresh(); }
}

setInterval(() => {
  for (const one of document.querySelectorAll("[data-work][data-seconds]")) {
    one.dataset.seconds = Number(one.dataset.seconds) + 1;
    one.querySelector("[data-far]").textContent = `going on for ${one.dataset.seconds} s`;
  }
}, 1000);

/* Forms that could not be sent are kept in this browser. */
const waiting = () => JSON.parse(localStorage.getItem(waitingKey) ?? "[]");
function keep(list) { list.length > 0 ? localStorage.setItem(waitingKey, JSON.stringify(list)) : localStorage.removeItem(waitingKey); }

async function sendWaiting() {
  for (let list = waiting(); list.length > 0; list = waiting()) {
    try { await send(list[0].action, list[0].body); } catch { return; }
    keep(list.slice(1));
  }
}

async function send(action, body) {
  const reply = await fetch(action, { method: "POST", body: typeof body === "string" ? new URLSearchParams(body) : body, headers: { Accept: "application/json" } });
  if (reply.status === 415 || reply.status === 413) return { done: false, errors: [await reply.text() || "The file is too large."] };
  return reply.json();
}

/** Sends an edit; where the program cannot be reached, keeps it and says so. Returns what came of it. */
export async function post(action, body) {
  try {
    return await send(action, body);
  } catch {
    if (typeof body === "string") {
      keep([...waiting(), { action, body }]);
      tell();
    }
    return { done: false, kept: true, errors: [] };
  }
}

document.addEventListener("submit", async (e) => {
  const form = e.target;
  if (!form.matches("form[data-edit]")) return;
  e.preventDefault();
  const data = new FormData(form, e.submitter);
  const upload = form.enctype === "multipart/form-data";
  const result = await post(form.getAttribute("action"), upload ? data : new URLSearchParams(data).toString());
  if (result.kept) return;
  const says = form.querySelector("[data-says]");
  if (says) says.textContent = [...(result.errors ?? []), result.conflict ?? ""].join(" ").trim();
  if (!result.done && says) { await refresh(); return; } // what was typed stays, with the answer beside it
  form.classList.remove("dirty");
  for (const input of form.elements) if ("defaultValue" in input && result.done) { input.defaultValue = input.value; input.defaultChecked = input.checked; }
  if (result.done && form.dataset.then) { location.assign(form.dataset.then); return; }
  await refresh(form.closest("[data-part]"));
});

document.addEventListener("input", (e) => {
  const form = e.target.closest("form[data-edit]");
  if (form && "defaultValue" in e.target) form.classList.toggle("dirty", [...form.elements].some(changed));
});

const changed = (input) => input.tagName === "INPUT" && input.type !== "hidden" && (input.type === "radio" || input.type === "checkbox" ? input.checked !== input.defaultChecked : input.value !== input.defaultValue);

/** Shows the page's parts anew. A part in which something is being typed stays, unless it is the one given. */
export async function refresh(force) {
  if (fetching) { again = true; forced ??= force; return; }
  force ??= forced;
  forced = undefined;
  fetching = true;
  try {
    const reply = await fetch(location.href, { headers: { Accept: "text/html" } });
    const fresh = new DOMParser().parseFromString(await reply.text(), "text/html");
    swap(document.body, fresh.body, force);
    html.dataset.shown = version ?? "";
    for (const handler of heard) handler({ say: "refreshed" });
  } catch (fault) {
    if (!(fault instanceof TypeError)) throw fault; // the line tells that the program cannot be reached
  } finally {
    fetching = false;
    if (again) { again = false; refresh(); }
  }
}

const outermost = (root) => [...root.querySelectorAll("[data-part]")].filter((p) => p.parentElement.closest("[data-part]") === null);

function swap(now, fresh, force) {
  const old = new Map(outermost(now).map((p) => [p.dataset.part, p]));
  for (const part of outermost(fresh)) {
    const shown = old.get(part.dataset.part);
    if (!shown || shown.dataset.keeps !== undefined) continue;
    const typing = shown !== force && ([...shown.querySelectorAll("input, select, textarea")].some((i) => changed(i)) || shown.querySelector("[data-says]:not(:empty)") !== null);
    if (typing) { if (shown.querySelector("[data-part]")) swapInner(shown, part, force); continue; }
    if (shown.isEqualNode(part)) continue;
    if (shown !== force && going(shown).length > 0 && going(shown) === going(part)) { swapInner(shown, part, force); continue; }
    replace(shown, part);
  }
}

/* Which works a part shows as going on. Such a part moves by what the line tells; it is not replaced under a finger that is about to stop it. */
const going = (part) => [...part.querySelectorAll("[data-work]")].map((w) => `${w.dataset.work}${w.querySelector("button")?.disabled ?? ""}${w.querySelector("progress").max > 1}`).join(" ");

function swapInner(shown, part, force) {
  const inner = new Map([...part.querySelectorAll("[data-part]")].map((p) => [p.dataset.part, p]));
  for (const one of shown.querySelectorAll("[data-part]")) {
    const with_ = inner.get(one.dataset.part);
    if (with_ && !one.isEqualNode(with_) && ![...one.querySelectorAll("input, select, textarea")].some((i) => changed(i))) replace(one, with_);
  }
}

function replace(shown, part) {
  const name = (d) => d.querySelector(":scope > summary")?.textContent.replace(/[\d.,−]+/g, "#");
  const open = new Set([...shown.querySelectorAll("details[open]")].map(name));
  const closed = new Set([...shown.querySelectorAll("details:not([open])")].map(name));
  const focused = shown.contains(document.activeElement) ? document.activeElement.id : "";
  for (const d of part.querySelectorAll("details")) { if (open.has(name(d))) d.open = true; else if (closed.has(name(d))) d.open = false; }
  shown.replaceWith(document.adoptNode(part));
  if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
}

connect();
