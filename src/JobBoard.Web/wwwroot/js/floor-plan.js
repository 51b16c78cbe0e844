// The map of the shop laid out by tap, by key or by dragging. The numbers in the forms are the truth; what is drawn follows them.
const plan = document.getElementById("floor-plan");
const map = document.getElementById("floor-plan-map");
const corner = document.getElementById("floor-plan-corner");
const says = document.getElementById("floor-plan-says");
const FINE = 0.1;
const LEAST = 0.2;
const FAR = 1000;
const NAMES = ["x", "y", "width", "depth"];

const formOf = (key) => plan.querySelector(`[data-form-of="${CSS.escape(key)}"]`);
const spotOf = (key) => document.getElementById("spot-" + key);
const fieldsOf = (key) => NAMES.map((name) => formOf(key).querySelector(`[data-area="${name}"]`));
const round = (metres) => Math.round(metres * 100) / 100;
const read = (text) => (/^\s*\d+([.,]\d+)?\s*$/.test(text) ? Number(text.trim().replace(",", ".")) : NaN);

let chosen = null;

const areaOf = (key) => fieldsOf(key).map((field) => read(field.value));
const wasOf = (key) => fieldsOf(key).map((field) => read(field.defaultValue));
const isMoved = (key) => areaOf(key).some((metres, i) => metres !== wasOf(key)[i]);
const keys = () => [...plan.querySelectorAll("[data-spot]")].map((spot) => spot.dataset.spot);
const overlap = (a, b) => a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3];

function draw(key) {
  const [x, y, width, depth] = areaOf(key);
  const spot = spotOf(key);
  spot.classList.toggle("moved", isMoved(key));
  if (![x, y, width, depth].every(Number.isFinite)) return;
  const box = spot.querySelector("rect");
  for (const [name, value] of [["x", x], ["y", y], ["width", width], ["height", depth]]) box.setAttribute(name, String(value));
  const text = spot.querySelector("text");
  text.setAttribute("x", String(round(x + 0.2)));
  text.setAttribute("y", String(round(spot.classList.contains("sweep") ? y + depth - 0.2 : y + 0.7)));
  if (key === chosen) {
    corner.setAttribute("x", String(round(x + width - 0.45)));
    corner.setAttribute("y", String(round(y + depth - 0.45)));
    corner.setAttribute("visibility", "visible");
  }
  grow(x + width, y + depth);
}

// The grid goes on where something is moved to its edge.
function grow(right, bottom) {
  const [, , width, depth] = map.getAttribute("viewBox").split(" ").map(Number);
  const [wide, deep] = [Math.max(width, Math.ceil(right + 1)), Math.max(depth, Math.ceil(bottom + 1))];
  if (wide !== width || deep !== depth) map.setAttribute("viewBox", `0 0 ${wide} ${deep}`);
}

function tell() {
  const moved = keys().filter(isMoved);
  plan.querySelector("[data-keep]").disabled = moved.length === 0;
  document.getElementById("floor-plan-changed").textContent = moved.length === 0 ? "Nothing is moved yet." : "Moved and not kept yet: " + moved.map(nameOf).join(", ") + ".";
  if (!chosen) return;
  const area = areaOf(chosen);
  if (!area.every(Number.isFinite)) {
    says.textContent = nameOf(chosen) + ": a number in metres is missing, such as 5.35.";
    return;
  }
  const shared = spotOf(chosen).classList.contains("sweep") ? [] : keys().filter((key) => key !== chosen && !spotOf(key).classList.contains("sweep") && overlap(area, areaOf(key))).map(nameOf);
  says.textContent = `${nameOf(chosen)}: ${area[0]} m from the left wall, ${area[1]} m from the upper, ${area[2]} by ${area[3]} m.` + (shared.length > 0 ? ` It shares floor with ${shared.join(", ")}.` : "");
}

const nameOf = (key) => spotOf(key).getAttribute("aria-label");

function choose(key) {
  chosen = key;
  for (const other of keys()) {
    spotOf(other).classList.toggle("chosen", other === key);
    spotOf(other).setAttribute("aria-pressed", String(other === key));
    formOf(other).classList.toggle("chosen", other === key);
  }
  document.getElementById("floor-plan-arrows").hidden = false;
  draw(key);
  tell();
}

function set(key, area) {
  const [x, y, width, depth] = area;
  const whole = [Math.max(0, x), Math.max(0, y), Math.max(LEAST, width), Math.max(LEAST, depth)].map((metres) => Math.min(FAR, round(metres)));
  fieldsOf(key).forEach((field, i) => { field.value = String(whole[i]); });
  draw(key);
  tell();
}

const move = (key, dx, dy) => { const [x, y, w, d] = areaOf(key); set(key, [x + dx, y + dy, w, d]); };
const size = (key, dw, dd) => { const [x, y, w, d] = areaOf(key); set(key, [x, y, w + dw, d + dd]); };

function metresAt(event) {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(map.getScreenCTM().inverse());
  return [at.x, at.y];
}

// Dragging begins only on what is chosen or under a mouse: a finger that pans the map moves nothing by mistake.
function drag(event, key, change) {
  const from = metresAt(event);
  const was = areaOf(key);
  const on = (moved) => {
    const at = metresAt(moved);
    change(was, snap(at[0] - from[0]), snap(at[1] - from[1]));
  };
  const off = () => { map.removeEventListener("pointermove", on); map.removeEventListener("pointerup", off); map.removeEventListener("pointercancel", off); };
  map.setPointerCapture(event.pointerId);
  map.addEventListener("pointermove", on);
  map.addEventListener("pointerup", off);
  map.addEventListener("pointercancel", off);
}

const snap = (metres) => round(Math.round(metres / FINE) * FINE);

function pressed(event) {
  if (event.target === corner && chosen) return drag(event, chosen, (was, dx, dy) => set(chosen, [was[0], was[1], was[2] + dx, was[3] + dy]));
  const key = event.target.closest("[data-spot]")?.dataset.spot;
  if (!key) return;
  const was = chosen === key || event.pointerType === "mouse";
  choose(key);
  if (was) drag(event, key, (area, dx, dy) => set(key, [area[0] + dx, area[1] + dy, area[2], area[3]]));
}

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function keyed(event) {
  const key = event.target.closest("[data-spot]")?.dataset.spot;
  if (!key) return;
  if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    choose(key);
    return;
  }
  const way = ARROWS[event.key];
  if (!way || event.altKey || event.metaKey) return;
  event.preventDefault();
  if (chosen !== key) choose(key);
  const by = event.shiftKey ? FINE : Number(plan.dataset.step);
  if (event.ctrlKey) size(key, way[0] * by, way[1] * by);
  else move(key, way[0] * by, way[1] * by);
}

function tapped(event) {
  const step = Number(plan.dataset.step);
  const by = (words) => words.split(" ").map((part) => Number(part) * step);
  const button = event.target.closest("button");
  if (button?.dataset.move && chosen) move(chosen, ...by(button.dataset.move));
  if (button?.dataset.size && chosen) size(chosen, ...by(button.dataset.size));
  if (button && "keep" in button.dataset) keep(button);
}

// One after another, each for itself: what cannot be kept stays open with its answer, what was kept is kept.
async function keep(button) {
  button.disabled = true;
  for (const key of keys().filter(isMoved)) {
    const form = formOf(key).querySelector("form");
    const kept = await sent(form, key);
    if (!kept) {
      choose(key);
      break;
    }
  }
  tell();
}

function sent(form, key) {
  const values = fieldsOf(key).map((field) => field.value);
  return new Promise((resolve) => {
    let isDone = false;
    const done = () => {
      isDone = true;
      fieldsOf(key).forEach((field, i) => { field.defaultValue = values[i]; field.value = values[i]; });
      draw(key);
    };
    form.addEventListener("command:done", done, { once: true });
    new MutationObserver((_, watch) => {
      if (form.hasAttribute("aria-busy")) return;
      watch.disconnect();
      form.removeEventListener("command:done", done);
      resolve(isDone);
    }).observe(form, { attributeFilter: ["aria-busy"] });
    form.requestSubmit();
  });
}

if (plan && map) {
  plan.dataset.live = "";
  document.getElementById("floor-plan-foot").hidden = false;
  for (const form of plan.querySelectorAll("form")) form.dataset.stay = "";
  map.addEventListener("pointerdown", pressed);
  map.addEventListener("keydown", keyed);
  map.addEventListener("focusin", (event) => { const key = event.target.closest("[data-spot]")?.dataset.spot; if (key) choose(key); });
  plan.addEventListener("click", tapped);
  plan.addEventListener("input", () => { if (chosen) { draw(chosen); tell(); } });
  window.addEventListener("beforeunload", (event) => { if (keys().some(isMoved)) event.preventDefault(); });
  says.textContent = "Tap a place on the map.";
}
