// The picture of When ready: panned by the frame's own scrolling, sized by two fingers, ctrl and wheel, keys and buttons; a
// step that is tapped says what its row in the table says. Without this script the picture scrolls and a step leads to its row.
const frame = document.querySelector("[data-ready-frame]");
const panel = document.getElementById("ready-open");
const LARGEST = 3;
const STEP = 1.25;
// Smaller than this no label can be read: they are left out.
const FAR = 0.4;
let scale = 1;
let shown = 1;
let settling = 0;
let stretching = 0;
let goal = null;
let room = null;
let open = null;
let current = null;

const parts = () => [picture(), document.getElementById("ready-days")];
const picture = () => document.getElementById("ready-svg");
const steps = () => [...frame.querySelectorAll(".ready-step")];
const size = () => ({ width: Number(picture().dataset.width), height: parts().reduce((sum, svg) => sum + Number(svg.dataset.height), 0) });
const smallest = () => Math.min(1, room.width / size().width, Math.max(room.height, 240) / size().height);
const measure = () => { room = { width: frame.clientWidth, height: frame.clientHeight }; };

// While a gesture lasts the picture is only stretched, once a frame; it is drawn anew when the gesture rests.
function settle() {
  clearTimeout(settling);
  cancelAnimationFrame(stretching);
  const svg = picture();
  if (!svg) return;
  const [left, top] = goal ?? [frame.scrollLeft, frame.scrollTop];
  [goal, stretching] = [null, 0];
  if (shown !== scale || svg.style.transform) {
    for (const part of parts()) {
      part.setAttribute("width", part.dataset.width * scale);
      part.setAttribute("height", part.dataset.height * scale);
      part.style.transform = "";
    }
    shown = scale;
  }
  frame.scrollTo(left, top);
}

const far = () => { for (const part of parts()) part.classList.toggle("is-far", scale < FAR); };

function stretch() {
  stretching = 0;
  for (const part of parts()) part.style.transform = `scale(${scale / shown})`;
  far();
  frame.scrollTo(...goal);
}

function resize(to, x = room.width / 2, y = room.height / 2) {
  if (!picture()) return;
  const next = Math.min(LARGEST, Math.max(smallest(), to));
  if (next === scale) return;
  const [left, top] = goal ?? [frame.scrollLeft, frame.scrollTop];
  goal = [((left + x) / scale) * next - x, ((top + y) / scale) * next - y];
  scale = next;
  stretching ||= requestAnimationFrame(stretch);
  clearTimeout(settling);
  settling = setTimeout(settle, 250);
}

// Now a fifth from the left; of the height the line, and what is in hand as far as both fit.
function toNow() {
  const svg = picture();
  if (!svg) return;
  const line = Number(svg.dataset.line);
  const inHand = [...frame.querySelectorAll(".in-hand")].map((s) => Number(s.dataset.y)).sort((a, b) => Math.abs(a - line) - Math.abs(b - line));
  let [top, bottom] = [line, line];
  for (const y of inHand) {
    if ((Math.max(bottom, y) - Math.min(top, y)) * scale > frame.clientHeight - 160) break;
    [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
  }
  frame.scrollTo(Number(svg.dataset.now) * scale - frame.clientWidth * 0.2, ((top + bottom) / 2) * scale - frame.clientHeight / 2);
}

function whole() {
  scale = smallest();
  far();
  goal = [0, 0];
  settle();
}

const act = { in: () => resize(scale * STEP), out: () => resize(scale / STEP), whole, now: toNow };

function isInSight(step) {
  const [x, y] = [Number(step.dataset.x) * scale - frame.scrollLeft, Number(step.dataset.y) * scale - frame.scrollTop];
  return x > 60 && x < frame.clientWidth - 60 && y > 60 && y < frame.clientHeight - 110;
}

function go(step) {
  current = step.id;
  if (!isInSight(step)) frame.scrollTo(Number(step.dataset.x) * scale - frame.clientWidth / 2, Number(step.dataset.y) * scale - frame.clientHeight / 2);
  step.focus({ preventScroll: true });
}

// The next step in a direction: along its own row first, then the nearest.
function next(from, dx, dy) {
  const [x, y] = [Number(from.dataset.x), Number(from.dataset.y)];
  let best = null;
  let least = Infinity;
  for (const step of steps()) {
    const [right, down] = [(Number(step.dataset.x) - x) * dx, (Number(step.dataset.y) - y) * dy];
    const [along, aside] = dx ? [right, Math.abs(Number(step.dataset.y) - y)] : [down, Math.abs(Number(step.dataset.x) - x)];
    const far = along + (dx ? 6 : 2) * aside;
    if (along > 0.5 && far < least) [best, least] = [step, far];
  }
  return best;
}

function first() {
  const now = Number(picture().dataset.now);
  return document.getElementById(current ?? "") ?? steps().filter((s) => s.matches(".on-line")).sort((a, b) => Math.abs(a.dataset.x - now) - Math.abs(b.dataset.x - now))[0];
}

function mark() {
  const row = open && document.getElementById("row-" + open);
  const linked = new Set(row ? [...row.querySelectorAll("[data-to]")].map((a) => a.dataset.to) : []);
  picture()?.classList.toggle("has-open", Boolean(row));
  for (const step of steps()) {
    step.setAttribute("tabindex", "-1");
    step.classList.toggle("is-open", step.dataset.step === open);
    step.classList.toggle("is-linked", linked.has(step.dataset.step));
  }
}

// What the row says, under its headings.
function fill() {
  const row = document.getElementById("row-" + open);
  if (!row) return close();
  const heads = [...row.closest("table").querySelectorAll("thead th")].map((th) => th.textContent);
  const head = document.createElement("div");
  head.className = "ready-open-head";
  const title = document.createElement("h2");
  title.append(...[...row.cells[0].childNodes].map((n) => n.cloneNode(true)));
  const button = Object.assign(document.createElement("button"), { className: "button quiet", type: "button", textContent: "Close" });
  button.addEventListener("click", close);
  head.append(title, button);
  const facts = Object.assign(document.createElement("dl"), { className: "facts" });
  for (let i = 1; i < row.cells.length; i++) {
    if (!row.cells[i].textContent.trim()) continue;
    facts.append(Object.assign(document.createElement("dt"), { textContent: heads[i] }));
    const words = document.createElement("dd");
    words.append(...[...row.cells[i].childNodes].map((n) => n.cloneNode(true)));
    facts.append(words);
  }
  panel.replaceChildren(head, facts);
  panel.hidden = false;
}

function show(step) {
  open = step.dataset.step;
  current = step.id;
  fill();
  mark();
}

function close() {
  open = null;
  panel.hidden = true;
  panel.replaceChildren();
  mark();
  document.getElementById(current ?? "")?.focus({ preventScroll: true });
}

function keys(event) {
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  if (event.ctrlKey || event.metaKey || event.altKey || !picture()) return;
  if (arrows[event.key]) {
    const [dx, dy] = arrows[event.key];
    if (event.shiftKey) frame.scrollBy(dx * 120, dy * 120);
    else {
      const from = document.activeElement.closest?.(".ready-step");
      const to = from ? next(from, dx, dy) : first();
      if (to) go(to);
    }
  } else if (event.key === "+" || event.key === "=") act.in();
  else if (event.key === "-") act.out();
  else if (event.key === "0") act.whole();
  else if (event.key === "n" || event.key === "N") act.now();
  else if (event.key === "Home") frame.scrollTo(0, frame.scrollTop);
  else if (event.key === "End") frame.scrollTo(frame.scrollWidth, frame.scrollTop);
  else if (event.key === "Escape" && open) close();
  else return;
  event.preventDefault();
}

const between = (a, b) => Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
let pinch = null;

function fingers(event) {
  if (event.touches.length !== 2) {
    pinch = null;
    return;
  }
  event.preventDefault();
  const [a, b] = event.touches;
  const box = frame.getBoundingClientRect();
  if (!pinch) pinch = { apart: between(a, b), scale };
  resize((pinch.scale * between(a, b)) / pinch.apart, (a.clientX + b.clientX) / 2 - box.left, (a.clientY + b.clientY) / 2 - box.top);
}

// The mouse takes hold of the picture; a press that did not move is a tap.
let held = null;
let moved = false;

function hold(event) {
  if (event.pointerType !== "mouse" || event.button !== 0) return;
  held = { x: event.clientX, y: event.clientY, left: frame.scrollLeft, top: frame.scrollTop };
  moved = false;
}

function drag(event) {
  if (!held) return;
  if (!moved && Math.hypot(event.clientX - held.x, event.clientY - held.y) < 5) return;
  moved = true;
  frame.scrollTo(held.left - event.clientX + held.x, held.top - event.clientY + held.y);
}

function changed() {
  if (!picture()) return;
  const [left, top] = [frame.scrollLeft, frame.scrollTop];
  far();
  goal ??= [left, top];
  shown = 0;
  settle();
  if (open) fill();
  mark();
}

if (frame && picture()) {
  for (const button of document.querySelectorAll("[data-ready]")) button.addEventListener("click", () => act[button.dataset.ready]());
  frame.addEventListener("keydown", keys);
  frame.addEventListener("wheel", (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    const box = frame.getBoundingClientRect();
    resize(scale * Math.exp(-event.deltaY / 300), event.clientX - box.left, event.clientY - box.top);
  }, { passive: false });
  for (const kind of ["touchstart", "touchmove", "touchend", "touchcancel"]) frame.addEventListener(kind, fingers, { passive: false });
  frame.addEventListener("pointerdown", hold);
  window.addEventListener("pointermove", drag);
  window.addEventListener("pointerup", () => { held = null; });
  frame.addEventListener("dragstart", (event) => event.preventDefault());
  frame.addEventListener("click", (event) => {
    const step = event.target.closest(".ready-step");
    if (!step) return;
    event.preventDefault();
    if (!moved) show(step);
    moved = false;
  });
  panel.addEventListener("click", (event) => {
    const to = event.target.closest("[data-to]");
    const step = to && document.getElementById("step-" + to.dataset.to);
    if (!step) return;
    event.preventDefault();
    go(step);
    show(step);
  });
  panel.addEventListener("keydown", (event) => { if (event.key === "Escape") close(); });
  document.addEventListener("live:changed", changed);
  measure();
  new ResizeObserver(measure).observe(frame);
  mark();
  toNow();
}
