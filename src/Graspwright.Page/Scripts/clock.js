// The clock at the bench: begun by one touch, then it needs none. It is kept by the program, and goes on here by itself
// while the program cannot be reached.
import { post } from "./page.js";

const clock = document.getElementById("clock");
if (clock) begin();

function begin() {
  const data = JSON.parse(clock.dataset.clock);
  const id = (name) => document.getElementById(name);
  const ahead = data.now - Date.now(); // the program's clock against this browser's
  let started = data.started, said = data.said ?? 0, sound, awake, told = -1;
  const key = () => `graspwright-said-${started}`;
  if (started !== undefined) { said = Math.max(said, Number(localStorage.getItem(key()) ?? 0)); stayAwake(); }
  id("can").textContent = ["speechSynthesis" in window && speechSynthesis.getVoices().length > 0 ? "Steps are spoken and beeped." : "Steps are beeped, and spoken where this browser has a voice.",
    "wakeLock" in navigator ? "The screen is kept awake." : "Switch off the screen's own sleep: this browser cannot keep it awake."].join(" ");

  id("start-form").addEventListener("submit", async (e) => {
    e.preventDefault();
    if (started !== undefined) return;
    openSound();
    stayAwake();
    const lead = 10;
    started = Date.now() + ahead + lead * 1000;
    said = 0;
    turn();
    say("READY", `Ready. Mixing begins in ${lead} seconds. Both hands in the putty.`);
    const result = await post("/clock/act/start", `lead=${lead}`);
    if (result.errors?.length > 0) { started = undefined; turn(); id("can").textContent = result.errors.join(" "); }
  });
  id("stop-form").addEventListener("submit", async (e) => {
    e.preventDefault();
    if (!confirm("Stop the clock?")) return;
    await post("/clock/act/stop", "");
    started = undefined;
    speechSynthesis?.cancel();
    awake?.release();
    turn();
  });
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible" && started !== undefined) stayAwake(); });
  document.addEventListener("pointerdown", openSound); // a browser lets a page sound only after a touch; one that was loaded again waits for it

  function openSound() { sound ??= "AudioContext" in window ? new AudioContext() : undefined; sound?.resume(); }

  async function stayAwake() {
    try { awake = await navigator.wakeLock?.request("screen"); }
    catch (refusal) { id("next").dataset.awake = refusal.name; } // a browser may refuse (low battery): the clock goes on all the same
  }

  function turn() { id("before").hidden = started !== undefined; id("during").hidden = started === undefined; clock.dataset.runs = started !== undefined; }

  function beep() {
    if (sound?.state !== "running") return;
    for (const [at, hertz] of [[0, 880], [0.22, 1175]]) {
      const tone = sound.createOscillator(), loud = sound.createGain();
      tone.frequency.value = hertz;
      loud.gain.setValueAtTime(0.25, sound.currentTime + at);
      loud.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + at + 0.2);
      tone.connect(loud).connect(sound.destination);
      tone.start(sound.currentTime + at);
      tone.stop(sound.currentTime + at + 0.2);
    }
  }

  function say(heading, text) {
    id("heading").textContent = heading;
    id("spoken").textContent = text;
    beep();
    if ("speechSynthesis" in window) { const words = new SpeechSynthesisUtterance(text); words.lang = "en"; speechSynthesis.speak(words); }
  }

  const figures = (s) => { const w = Math.floor(Math.abs(s)); return `${s < 0 ? "−" : ""}${Math.floor(w / 60)}:${String(w % 60).padStart(2, "0")}`; };

  function tick() {
    if (started !== undefined) {
      const elapsed = (Date.now() + ahead - started) / 1000;
      id("figures").textContent = figures(elapsed < 0 ? Math.floor(elapsed) : elapsed);
      const due = data.lines.findLastIndex((l) => l.at <= elapsed) + 1;
      if (due > said) {
        const line = data.lines[due - 1]; // of lines missed meanwhile, only the last is said
        said = due;
        localStorage.setItem(key(), String(said));
        say(line.heading, line.text);
        post("/clock/act/said", `said=${said}`);
      } else if (told < 0 && due > 0) {
        id("heading").textContent = data.lines[due - 1].heading;
        id("spoken").textContent = data.lines[due - 1].text;
      }
      told = due;
      const next = data.lines[due];
      id("next").textContent = next ? `Next at ${figures(next.at)}: ${next.heading.toLowerCase()}, in ${figures(Math.max(0, next.at - elapsed))}.` : "The clock has ended.";
      clock.dataset.said = said;
    }
  }

  turn();
  tick();
  setInterval(tick, 200);
}
