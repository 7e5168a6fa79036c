// What comes from the board now: the state of each channel in words, and its envelope as a line of ink.
import { hear } from "./page.js";

const Kept = 100, still = matchMedia("(prefers-reduced-motion: reduce)");
const courses = new Map();

hear((m) => {
  if (m.say !== "work" || m.key !== "listen" || !m.channels) return;
  for (const channel of m.channels) {
    const course = courses.get(channel.name) ?? [];
    courses.set(channel.name, course);
    course.push(channel.level);
    if (course.length > Kept) course.shift();
    const shown = document.querySelector(`#now [data-channel="${CSS.escape(channel.name)}"]`);
    if (!shown) continue;
    const words = channel.acted === undefined ? channel.words : `${channel.words}; acted ${channel.acted} times`;
    const says = shown.querySelector("[data-state]");
    if (says.textContent !== words) says.textContent = words;
    shown.dataset.acts = channel.words === "tensed";
    if (!still.matches) shown.querySelector("polyline").setAttribute("points", course.map((level, i) => `${Kept - course.length + i},${(19 - 18 * level).toFixed(1)}`).join(" "));
  }
});
