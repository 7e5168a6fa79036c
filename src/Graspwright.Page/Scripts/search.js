// The search page: a touched dot of the front, or a number from the list, is shown below.
import { refresh } from "./page.js";

const middle = (c) => { const b = c.getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; };

async function show(point) {
  history.replaceState(null, "", `/search?point=${point}`);
  await refresh(document.querySelector("[data-part=search]"));
}

document.addEventListener("change", (e) => { if (e.target.id === "point-choice") show(e.target.value); });
document.addEventListener("submit", (e) => { if (e.target.id === "pick") e.preventDefault(); });

document.addEventListener("click", (e) => {
  const drawing = e.target.closest("#point .drawing");
  const choice = document.getElementById("point-choice");
  if (!drawing || !choice) return;
  const dots = [...drawing.querySelectorAll("[data-layer=front] circle")];
  let best = 24, at = -1;
  dots.forEach((dot, i) => {
    const [x, y] = middle(dot), away = Math.hypot(x - e.clientX, y - e.clientY);
    if (away < best) { best = away; at = i; }
  });
  if (at >= 0) show(at % choice.options.length + 1); // a panel for each further aim has every dot once more
});
