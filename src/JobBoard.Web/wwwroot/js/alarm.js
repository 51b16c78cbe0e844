// A stop that touches this screen sounds and vibrates until it is heard (a wall: three times). Browsers let a page sound only
// after somebody touched it, so until then a line says so. Where the screen says more of a stop further up or down, the line at
// the top stands for it only while that is out of view; nothing scrolls by itself, as it would move under a finger.
const AGAIN = 4000;
const WALL_TIMES = 3;
const known = new Map();
let audio = null;

function wake(event) {
  audio ??= window.AudioContext ? new AudioContext() : null;
  audio?.resume().then(event.type === "keydown" ? later : () => {}, () => {});
}

// The line goes only when the tap is over: earlier, the page would move under the finger and the tap be lost.
function later() {
  setTimeout(hint, 600);
}

function hint() {
  const silent = !audio || audio.state !== "running";
  for (const line of document.querySelectorAll("[data-silent]")) line.hidden = !silent;
}

function tone(at, pitch) {
  const [oscillator, gain] = [audio.createOscillator(), audio.createGain()];
  oscillator.type = "square";
  oscillator.frequency.value = pitch;
  gain.gain.setValueAtTime(0.0001, at);
  gain.gain.exponentialRampToValueAtTime(0.4, at + 0.02);
  gain.gain.exponentialRampToValueAtTime(0.0001, at + 0.28);
  oscillator.connect(gain).connect(audio.destination);
  oscillator.start(at);
  oscillator.stop(at + 0.3);
}

function sound() {
  document.documentElement.dataset.sounded = String(Number(document.documentElement.dataset.sounded ?? 0) + 1);
  if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.([300, 100, 300, 100, 300]);
  if (!audio || audio.state !== "running") return;
  for (let i = 0; i < 3; i++) tone(audio.currentTime + i * 0.35, i % 2 === 0 ? 880 : 660);
}

function look() {
  const now = new Set();
  for (const stop of document.querySelectorAll("[data-alarm]")) now.add(stop.dataset.alarm);
  for (const id of known.keys()) if (!now.has(id)) known.delete(id);
  const wall = document.documentElement.dataset.viewer === "wall";
  let due = false;
  for (const id of now) {
    const times = known.get(id) ?? 0;
    if (!wall || times < WALL_TIMES) due = true;
    known.set(id, times + 1);
  }
  if (due) sound();
}

function lookForNew() {
  for (const stop of document.querySelectorAll("[data-alarm]")) if (!known.has(stop.dataset.alarm)) return look();
}

const moreOf = (id) => document.getElementById("stop-" + id) ?? document.getElementById("hold-" + id);

function markOutOfView() {
  for (const alarm of document.querySelectorAll("[data-alarm]")) {
    const box = moreOf(alarm.dataset.alarm)?.getBoundingClientRect();
    alarm.toggleAttribute("data-out-of-view", !box || box.bottom < 64 || box.top > window.innerHeight - 64);
  }
}

function show(event) {
  const id = event.target.closest?.("[data-show-stop]")?.dataset.showStop;
  if (id) moreOf(id)?.scrollIntoView({ block: "center" });
}

export function start() {
  for (const gesture of ["pointerdown", "keydown"]) document.addEventListener(gesture, wake, { once: true });
  for (const end of ["pointerup", "pointercancel"]) document.addEventListener(end, later, { once: true });
  document.addEventListener("live:changed", lookForNew);
  document.addEventListener("live:changed", markOutOfView);
  for (const moved of ["scroll", "resize"]) window.addEventListener(moved, markOutOfView, { passive: true });
  document.addEventListener("click", show);
  setInterval(look, AGAIN);
  hint();
  lookForNew();
  markOutOfView();
}
