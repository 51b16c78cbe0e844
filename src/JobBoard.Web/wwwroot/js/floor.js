// The wall's own moving parts: the clock and the turning of pages. Both survive a fragment being morphed, because they are worked out
// from the clock and put back whenever the markup changes.
const pageSeconds = 10;
const held = new Map();

/** Shows one page of every element with data-pages above 1; which one follows from the clock, so that all walls turn together. */
export function turnPages(root = document, now = Date.now()) {
  for (const part of root.querySelectorAll("[data-pages]")) {
    const pages = Number(part.dataset.pages);
    if (!(pages > 1)) continue;
    const page = held.get(part.id) ?? (Math.floor(now / 1000 / pageSeconds) % pages) + 1;
    for (const each of part.querySelectorAll("[data-page]")) {
      const hide = Number(each.dataset.page) !== Math.min(page, pages);
      if (each.hidden !== hide) each.hidden = hide;
    }
    const shown = root.querySelector(`[data-page-now="${part.id}"]`);
    if (shown && shown.textContent !== String(page)) shown.textContent = String(page);
    const button = root.querySelector(`[data-hold-pages="${part.id}"]`);
    const pressed = String(held.has(part.id));
    if (button && button.getAttribute("aria-pressed") !== pressed) button.setAttribute("aria-pressed", pressed);
  }
}

const seen = new WeakMap();

/** Lets every <time data-clock> run on from the instant the server wrote into it, in that instant's own offset. */
export function runClocks(root = document, now = performance.now()) {
  for (const clock of root.querySelectorAll("time[data-clock]")) {
    const written = clock.getAttribute("datetime");
    let from = seen.get(clock);
    if (!from || from.written !== written) {
      from = { written, at: now };
      seen.set(clock, from);
    }
    const text = wallTime(written, now - from.at);
    if (clock.textContent !== text) clock.textContent = text;
  }
}

/** "Tue 24 Nov 14:07" for an ISO instant with offset, some milliseconds later. */
export function wallTime(iso, later) {
  const offset = /([+-])(\d\d):(\d\d)$/.exec(iso);
  const minutes = offset ? (offset[1] === "-" ? -1 : 1) * (Number(offset[2]) * 60 + Number(offset[3])) : 0;
  const local = new Date(Date.parse(iso) + later + minutes * 60000);
  const day = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"][local.getUTCDay()];
  const month = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"][local.getUTCMonth()];
  const two = (value) => String(value).padStart(2, "0");
  return `${day} ${local.getUTCDate()} ${month} ${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`;
}

function tick() {
  turnPages();
  runClocks();
}

if (document.getElementById("floor")) {
  document.addEventListener("click", (event) => {
    const button = event.target.closest("[data-hold-pages]");
    if (!button) return;
    const part = button.dataset.holdPages;
    const shown = Number(document.querySelector(`[data-page-now="${part}"]`)?.textContent ?? 1);
    if (!held.delete(part)) held.set(part, shown);
    tick();
  });
  new MutationObserver(tick).observe(document.getElementById("floor"), { childList: true, subtree: true, attributes: true, attributeFilter: ["hidden", "datetime"] });
  setInterval(tick, 500);
  tick();
}
