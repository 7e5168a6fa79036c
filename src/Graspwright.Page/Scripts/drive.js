// The drive page: points are dragged, the newest question wins, and no picture older than 100 ms is shown.
import { ask, hear, post, refresh } from "./page.js";

const oldest = 100; // ms: a reply later than this after its question is not shown
const scene = document.getElementById("scene");
if (scene) begin();

function begin() {
  const drawing = document.getElementById("scene-drawing"), curves = document.getElementById("curves"), grab = document.getElementById("grab");
  const words = document.getElementById("drive-words"), acting = document.getElementById("drive-acting"), movedSays = document.getElementById("moved");
  const wrist = document.getElementById("wrist"), wristSays = document.getElementById("wrist-says"), playRun = document.getElementById("play-run");
  const choices = document.getElementById("drive-choices"), list = document.getElementById("handles");
  let handles = [], scale = 1, number = 0, shown = 0, asked = new Map(), waiting = null, drag = null, last = null, following = !new URLSearchParams(location.search).has("at"), playing = 0, spots = [], putting = false;

  // Sizes are read when they change and not while dragging, as reading them makes the browser lay out what was just drawn.
  let width = scene.clientWidth, mm = 1;

  const chosen = () => list.querySelector("input:checked")?.value ?? "";
  const handle = (key) => handles.find((h) => h.key === key);
  const state = () => Object.fromEntries(new FormData(choices));

  function question(extra = {}) {
    const s = state();
    return { n: ++number, object: s.object ?? "", effort: s.effort ?? "", locks: s.locks ?? "", view: s.view ?? "", ghost: Number(s.ghost ?? 0), width: width / 3.7795,
      ...(following ? {} : { at: Number(wrist.value) }), ...(drag ? { handle: drag.key, x: drag.x, y: drag.y } : {}), ...extra };
  }

  // One question is on its way at a time; of those that wait, the newest goes next.
  function show(at = performance.now()) {
    waiting = at;
    if (asked.size === 0) send();
  }

  function send() {
    if (waiting === null) return;
    const q = question();
    const at = waiting;
    waiting = null;
    if (ask(q)) asked.set(q.n, at);
  }

  hear((m) => {
    if (m.say === "shown") reply(m);
    else if (m.say === "gone") { asked.clear(); ready(false); }
    else if (m.say === "open") { asked.clear(); ready(true); if (!drag && last?.kept) drag = last; show(); }
    else if (m.say === "changed" || m.say === "refreshed") { if (!drag) show(); }
  });

  function reply(m) {
    const at = asked.get(m.n);
    for (const n of asked.keys()) if (n <= m.n) asked.delete(n); // older questions were overtaken and get no reply
    const late = at === undefined || (drag && performance.now() - at > oldest);
    if (m.n > shown && !late) { shown = m.n; next = [m, at]; frame ||= requestAnimationFrame(draw); }
    if (waiting !== null) send();
    else if (late) show(); // what was asked came too late to be shown: ask for what is true now
  }

  // What came last is drawn at the beginning of the browser's next frame, once.
  let next = null, frame = 0;
  function draw() {
    frame = 0;
    paint(...next);
  }

  // A drawing is made of layers one behind the other; only those that differ are put in, as most of a chart stands still.
  const drawn = new WeakMap();
  function put(svg, marks) {
    const layers = marks.includes('class="ghost"') ? null : marks.split(/(?=<g data-layer)/), before = drawn.get(svg);
    if (layers && before?.length === layers.length && svg.children.length === layers.length) {
      const now = [...svg.children];
      layers.forEach((layer, i) => { if (layer !== before[i]) now[i].outerHTML = layer; });
    } else svg.innerHTML = marks;
    drawn.set(svg, layers);
  }

  const say = (element, text) => { if (element.textContent !== text) element.textContent = text; };

  function paint(m, at) {
    say(words, m.words);
    say(acting, m.acting);
    acting.classList.toggle("wrong", !m.sound);
    if (m.sound) {
      if (drawing.getAttribute("viewBox") !== m.view) drawing.setAttribute("viewBox", m.view);
      put(drawing, m.scene);
      if (curves.getAttribute("viewBox") !== m.curvesView) curves.setAttribute("viewBox", m.curvesView);
      put(curves, m.curves);
      handles = m.handles;
      scale = m.scale;
      if (following || (m.n === number && waiting === null)) wrist.value = m.at; // a reply to an older question must not take the slider back from the hand
      wristSays.textContent = `${m.at.toFixed(1)}°`;
      wrist.dataset.end = m.end;
      place();
    }
    if (drag) {
      drag.moved = m.moved;
      drag.sound = m.sound;
      say(movedSays, m.moved.map((v) => `${v.path}: ${v.seen} → ${v.value}`).join("; "));
    }
    scene.dataset.shown = m.n;
    if (drag) scene.dispatchEvent(new CustomEvent("painted", { detail: at })); // at the beginning of a frame, with the time of the move that it shows
  }

  function lay(mark, h) {
    const left = `${100 * h.right}%`, top = `${100 * h.down}%`;
    if (mark.dataset.at === left + top) return;
    mark.dataset.at = left + top;
    mark.style.left = left;
    mark.style.top = top;
  }

  function place() {
    while (spots.length < handles.length) { const s = document.createElement("span"); s.className = "spot"; s.setAttribute("aria-hidden", "true"); scene.append(s); spots.push(s); }
    spots.forEach((s, i) => { s.hidden = i >= handles.length; if (!s.hidden) lay(s, handles[i]); });
    const h = handle(chosen());
    grab.hidden = !h;
    if (h) { lay(grab, h); grab.setAttribute("aria-label", `Move ${h.words}`); }
  }

  function ready(yes) {
    scene.classList.toggle("ready", yes);
    for (const c of [grab, wrist, playRun, ...list.querySelectorAll("input")]) c.disabled = !yes && !(drag && c === grab);
  }

  /* Dragging. */
  const mmPerPixel = () => (scale * drawing.viewBox.baseVal.width) / drawing.getBoundingClientRect().width;

  scene.addEventListener("pointerdown", (e) => {
    if (e.button !== 0 || handles.length === 0 || !scene.classList.contains("ready")) return;
    const box = drawing.getBoundingClientRect();
    const distance = (h) => Math.hypot(e.clientX - box.left - h.right * box.width, e.clientY - box.top - h.down * box.height) - (h.key === chosen() ? 10 : 0);
    const nearest = handles.reduce((a, b) => (distance(b) < distance(a) ? b : a));
    if (distance(nearest) > 30) return;
    e.preventDefault();
    list.querySelector(`input[value="${CSS.escape(nearest.key)}"]`).checked = true;
    drag = { key: nearest.key, x: nearest.x, y: nearest.y, startX: nearest.x, startY: nearest.y, fromX: e.clientX, fromY: e.clientY, moved: [], pointer: e.pointerId };
    mm = mmPerPixel();
    scene.setPointerCapture(e.pointerId);
    scene.classList.add("dragging");
    grab.focus({ preventScroll: true });
    place();
  });

  // Where the browser tells of moves as they come, and not only once a frame, the answer is there a frame earlier.
  scene.addEventListener("onpointerrawupdate" in scene ? "pointerrawupdate" : "pointermove", (e) => {
    if (!drag || drag.pointer !== e.pointerId) return;
    drag.x = drag.startX + (e.clientX - drag.fromX) * mm;
    drag.y = drag.startY - (e.clientY - drag.fromY) * mm;
    show(e.timeStamp);
  });

  scene.addEventListener("pointerup", (e) => { if (drag?.pointer === e.pointerId) settle(); });
  scene.addEventListener("pointercancel", (e) => { if (drag?.pointer === e.pointerId) leave(); });
  document.addEventListener("keydown", (e) => { if (e.key === "Escape" && drag) leave(); });

  function leave() {
    drag = null;
    scene.classList.remove("dragging");
    movedSays.textContent = "Left as it was.";
    show();
  }

  /** Puts what was moved into the hand file: first the newest place is worked out, then its values go in. */
  async function settle() {
    scene.classList.remove("dragging");
    const mine = drag;
    const done = await settled(mine);
    if (!done) return;
    if (mine.sound === false) { movedSays.textContent = "It was not put in: so the hand cannot be put together."; drag = null; show(); return; }
    drag = null;
    if (mine.moved.length === 0) return;
    putting = true;
    const body = new URLSearchParams();
    for (const v of mine.moved) { body.append("path", v.path); body.append("value", v.value); body.append("seen", v.seen); }
    body.append("words", `moving ${handle(mine.key)?.words.split(":")[0] ?? mine.key}`);
    const result = await post("/edit", body.toString());
    putting = false;
    movedSays.textContent = result.done ? `In the hand file: ${mine.moved.map((v) => `${v.path} = ${v.value}`).join("; ")}.` : result.kept ? "Kept here until the program is back." : [...(result.errors ?? []), result.conflict ?? ""].join(" ");
    show();
    refresh();
  }

  // Waits until the reply to the newest place of a drag is there; without a line, until it is back.
  function settled(mine) {
    return new Promise((resolve) => {
      const wanted = number + 1;
      const q = question();
      if (!ask(q)) { last = mine; last.kept = true; movedSays.textContent = "No connection: the move is kept here and goes in when the program is back."; }
      else asked.set(q.n, performance.now());
      waiting = null;
      const stop = (m) => {
        if (m.say === "open" && drag === mine) { const again = question(); mine.wait = again.n; ask(again); asked.set(again.n, performance.now()); }
        if (m.say === "shown" && m.n >= (mine.wait ?? wanted)) { mine.moved = m.moved; mine.sound = m.sound; mine.kept = false; resolve(true); return; }
        if (drag !== mine) { resolve(false); return; }
        once(stop);
      };
      once(stop);
    });
  }

  const once_ = new Set();
  function once(f) { once_.add(f); }
  hear((m) => { const all = [...once_]; once_.clear(); for (const f of all) f(m); });

  /* Keys on the ring. */
  let keyTimer = 0;
  grab.addEventListener("keydown", (e) => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (e.key === "Enter" && drag && drag.pointer === undefined) { clearTimeout(keyTimer); settle(); e.preventDefault(); return; }
    const h = handle(chosen());
    if (!step || !h || (drag && drag.pointer !== undefined) || putting) return;
    e.preventDefault();
    const by = e.shiftKey ? 1 : 0.1;
    drag ??= { key: h.key, x: h.x, y: h.y, moved: [] };
    drag.x += step[0] * by;
    drag.y += step[1] * by;
    show();
    clearTimeout(keyTimer);
    keyTimer = setTimeout(() => { if (drag && drag.pointer === undefined) settle(); }, 900);
  });
  list.addEventListener("change", place);

  /* What is looked at. */
  choices.addEventListener("submit", (e) => e.preventDefault());
  choices.addEventListener("change", () => { following = true; look(); show(); });
  wrist.addEventListener("input", () => { stopPlaying(); following = false; look(); show(); });
  function look() {
    const s = state();
    const q = new URLSearchParams(s);
    if (!following) q.set("at", wrist.value);
    history.replaceState(null, "", `?${q}`);
  }

  function stopPlaying() { cancelAnimationFrame(playing); playing = 0; playRun.textContent = "Play closing"; }
  playRun.addEventListener("click", () => {
    if (playing) { stopPlaying(); return; }
    const end = Number(wrist.dataset.end ?? wrist.max), start = performance.now(), seconds = matchMedia("(prefers-reduced-motion: reduce)").matches ? 0 : 2.4;
    following = false;
    playRun.textContent = "Stop";
    const step = (now) => {
      const share = seconds === 0 ? 1 : Math.min(1, (now - start) / 1000 / seconds);
      wrist.value = end * share;
      show();
      if (share < 1) playing = requestAnimationFrame(step);
      else { stopPlaying(); following = true; show(); }
    };
    playing = requestAnimationFrame(step);
  });
  new ResizeObserver(() => { width = scene.clientWidth; if (scene.classList.contains("ready") && !drag) show(); }).observe(scene);
}
