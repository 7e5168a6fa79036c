// The turning view of the form: a coarse skin painted from the far side to the near one, with the lines that lie on it.
// Drag, sliders or buttons turn it; it stands still otherwise.
import { hear } from "./page.js";

const canvas = document.getElementById("solid"), says = document.getElementById("solid-says"), tools = document.getElementById("solid-tools");
const turn = document.getElementById("solid-turn"), tilt = document.getElementById("solid-tilt");
const dark = matchMedia("(prefers-color-scheme: dark)"), print = matchMedia("print");
let form, shown, loading, frame = 0;

async function load() {
  const of = document.getElementById("solid-of")?.dataset.of;
  if (!of) {
    const part = document.getElementById("part-form");
    if (part && !part.querySelector("[data-waits]")) { says.textContent = "There is no form to turn; below stands why."; tools.hidden = true; says.hidden = false; }
    return;
  }
  if (of === shown || of === loading) return;
  loading = of;
  try {
    const reply = await fetch("/pattern/solid.json");
    if (!reply.ok) return;
    form = prepare(await reply.json());
    shown = of;
    says.hidden = true;
    tools.hidden = false;
    draw();
    canvas.dataset.of = of;
  } catch (fault) {
    if (!(fault instanceof TypeError)) throw fault; // the line tells that the program cannot be reached
  } finally {
    loading = undefined;
  }
}

// Middle, size, and for each edge the triangles beside it.
function prepare(f) {
  const low = [1e9, 1e9, 1e9], high = [-1e9, -1e9, -1e9];
  f.points.forEach((v, i) => { low[i % 3] = Math.min(low[i % 3], v); high[i % 3] = Math.max(high[i % 3], v); });
  f.middle = low.map((v, i) => (v + high[i]) / 2);
  f.reach = Math.hypot(...low.map((v, i) => high[i] - v)) / 2;
  f.count = f.corners.length / 3;
  const edges = new Map();
  for (let t = 0; t < f.count; t++) for (let k = 0; k < 3; k++) {
    const a = f.corners[3 * t + k], b = f.corners[3 * t + (k + 1) % 3], key = a < b ? a * 1e6 + b : b * 1e6 + a;
    const e = edges.get(key);
    if (e) e.t.push(t); else edges.set(key, { a, b, t: [t] });
  }
  f.edges = [...edges.values()];
  return f;
}

// Right, up and toward the eye of a point. Turn 180 looks at the back of the hand, fingertips up.
function looker() {
  const a = turn.value * Math.PI / 180, b = tilt.value * Math.PI / 180, [mx, my, mz] = form.middle;
  const ca = Math.cos(a), sa = Math.sin(a), cb = Math.cos(b), sb = Math.sin(b);
  const way = (x, y, z) => { const r = x * ca + y * sa, d = x * sa - y * ca; return [r, z * cb - d * sb, d * cb + z * sb]; };
  return { way, at: (p, i) => way(p[i] - mx, p[i + 1] - my, p[i + 2] - mz) };
}

const inks = () => { const s = getComputedStyle(document.documentElement), of = (n) => s.getPropertyValue(`--${n}`).trim(); return { paper: of("paper"), ink: of("ink"), pale: of("pale"), accent: of("accent"), wash: of("wash"), rule: of("rule") }; };
const parts = (hex) => [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16));
const mix = (a, b, t) => `rgb(${a.map((v, i) => Math.round(v + (b[i] - v) * t)).join(" ")})`;

function draw() {
  if (!form) return;
  const width = canvas.clientWidth, height = canvas.clientHeight, dense = devicePixelRatio;
  if (width === 0) return;
  canvas.width = Math.round(width * dense);
  canvas.height = Math.round(height * dense);
  const c = canvas.getContext("2d"), ink = inks(), look = looker(), scale = Math.min(width, height) / (2.05 * form.reach);
  c.setTransform(dense, 0, 0, dense, 0, 0);
  c.clearRect(0, 0, width, height);
  c.lineJoin = c.lineCap = "round";
  const X = (p) => width / 2 + scale * p[0], Y = (p) => height / 2 - scale * p[1];
  const seen = [];
  for (let i = 0; i < form.points.length; i += 3) seen.push(look.at(form.points, i));
  const paper = parts(ink.paper), shade = parts(ink.rule), front = new Uint8Array(form.count), items = [];
  for (let t = 0; t < form.count; t++) {
    const p = seen[form.corners[3 * t]], q = seen[form.corners[3 * t + 1]], r = seen[form.corners[3 * t + 2]];
    const nx = (q[1] - p[1]) * (r[2] - p[2]) - (q[2] - p[2]) * (r[1] - p[1]), ny = (q[2] - p[2]) * (r[0] - p[0]) - (q[0] - p[0]) * (r[2] - p[2]), nz = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    if (nz <= 0) continue;
    front[t] = 1;
    items.push({ d: (p[2] + q[2] + r[2]) / 3, p, q, r, fill: mix(shade, paper, 0.35 + 0.65 * Math.pow(nz / Math.hypot(nx, ny, nz), 0.7)) });
  }
  const near = 0.035 * form.reach; // lines lie on the finer surface: they are painted as if this much nearer
  for (const e of form.edges) if (e.t.length !== 2 || front[e.t[0]] !== front[e.t[1]]) if (e.t.some((t) => front[t])) items.push({ d: (seen[e.a][2] + seen[e.b][2]) / 2, a: seen[e.a], b: seen[e.b], pen: ink.ink, w: 1.2 });
  const pens = { contour: [ink.pale, 0.7], edge: [ink.ink, 2.4], seam: [ink.accent, 2], skin: [ink.ink, 1.1, [4, 3]], hollow: [ink.accent, 1.4] };
  for (const line of form.lines) {
    const [pen, w, dash] = pens[line.kind];
    let before = look.at(line.points, 0);
    for (let i = 3; i < line.points.length; i += 3) {
      const now = look.at(line.points, i);
      items.push({ d: (before[2] + now[2]) / 2 + near, a: before, b: now, pen, w, dash });
      before = now;
    }
  }
  items.sort((a, b) => a.d - b.d);
  for (const o of items) {
    c.beginPath();
    if (o.fill) {
      c.moveTo(X(o.p), Y(o.p)); c.lineTo(X(o.q), Y(o.q)); c.lineTo(X(o.r), Y(o.r)); c.closePath();
      c.fillStyle = c.strokeStyle = o.fill; c.lineWidth = 0.8; c.setLineDash([]);
      c.fill(); c.stroke();
    } else {
      c.moveTo(X(o.a), Y(o.a)); c.lineTo(X(o.b), Y(o.b));
      c.strokeStyle = o.pen; c.lineWidth = o.w; c.setLineDash(o.dash ?? []);
      c.stroke();
    }
  }
  c.setLineDash([]);
  c.textAlign = "center";
  c.textBaseline = "middle";
  c.font = "600 13px system-ui, sans-serif";
  for (const hollow of form.hollows) {
    const p = look.at(hollow.at, 0);
    if (look.way(...hollow.toward)[2] <= 100) continue;
    c.beginPath(); c.arc(X(p), Y(p), 11, 0, 7); c.fillStyle = ink.paper; c.fill(); c.strokeStyle = ink.accent; c.lineWidth = 2; c.stroke();
    c.fillStyle = ink.ink; c.fillText(hollow.words, X(p), Y(p) + 0.5);
  }
  tell();
}

function tell() {
  const a = Number(turn.value), b = Number(tilt.value);
  document.getElementById("solid-turn-says").textContent = `${a}°`;
  document.getElementById("solid-tilt-says").textContent = `${b < 0 ? "−" : ""}${Math.abs(b)}°`;
  const from = ["palm", "palm and the thumb’s side", "thumb’s side", "back and the thumb’s side", "back", "back and the little finger’s side", "little finger’s side", "palm and the little finger’s side"][Math.round((form.left ? 360 - a : a) / 45) % 8];
  document.getElementById("solid-seen").textContent = b > 60 ? "Seen from the fingertips." : b < -60 ? "Seen from the forearm." : `Seen from the ${from}; fingertips up.`;
  canvas.dataset.seen = `${a} ${b}`;
}

const soon = () => { cancelAnimationFrame(frame); frame = requestAnimationFrame(draw); };
for (const slider of [turn, tilt]) slider.addEventListener("input", soon);
tools.addEventListener("click", (e) => { if (e.target.dataset.turn) { turn.value = form.left ? (360 - e.target.dataset.turn) % 360 : e.target.dataset.turn; tilt.value = e.target.dataset.tilt; soon(); } });
let drag = null;
canvas.addEventListener("pointerdown", (e) => { drag = { id: e.pointerId, x: e.clientX, y: e.clientY, turn: Number(turn.value), tilt: Number(tilt.value) }; canvas.setPointerCapture(e.pointerId); });
canvas.addEventListener("pointermove", (e) => {
  if (drag?.id !== e.pointerId) return;
  turn.value = (((drag.turn - (e.clientX - drag.x) * 0.6) % 360) + 360) % 360;
  tilt.value = Math.max(-90, Math.min(90, drag.tilt + (e.clientY - drag.y) * 0.6));
  soon();
});
for (const end of ["pointerup", "pointercancel"]) canvas.addEventListener(end, () => { drag = null; });
new ResizeObserver(soon).observe(canvas);
for (const scheme of [dark, print]) scheme.addEventListener("change", soon);
hear((m) => { if (m.say === "refreshed") load(); });
load();
