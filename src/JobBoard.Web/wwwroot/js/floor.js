// The wall's pages turn by themselves. Which page shows follows from the clock, so it survives a fragment being morphed.
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
      if (each.hasAttribute("hidden") !== hide) each.toggleAttribute("hidden", hide); // drawn parts have no property of that name
    }
    const shown = root.querySelector(`[data-page-now="${part.id}"]`);
    if (shown && shown.textContent !== String(page)) shown.textContent = String(page);
    const button = root.querySelector(`[data-hold-pages="${part.id}"]`);
    const pressed = String(held.has(part.id));
    if (button && button.getAttribute("aria-pressed") !== pressed) button.setAttribute("aria-pressed", pressed);
  }
}

if (document.getElementById("floor")) {
  document.addEventListener("click", (event) => {
    const button = event.target.closest("[data-hold-pages]");
    if (!button) return;
    const part = button.dataset.holdPages;
    const shown = Number(document.querySelector(`[data-page-now="${part}"]`)?.textContent ?? 1);
    if (!held.delete(part)) held.set(part, shown);
    turnPages();
  });
  document.addEventListener("live:changed", () => turnPages());
  setInterval(() => turnPages(), 500);
  turnPages();
}
