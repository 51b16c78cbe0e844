// A table pasted from a spreadsheet: shown as what becomes of it, then added; rows that cannot be read stay in the box.
import { h } from "./fields.js";
import { words } from "./words.js";

export function openPaste(box, ask, replace) {
  box.hidden = false;
  if (box.firstChild) return box.querySelector("textarea").focus();
  const text = h("textarea", { id: "plan-table", rows: "8", spellcheck: "false", "aria-describedby": "plan-table-hint" });
  const report = h("div", { id: "plan-table-report", "aria-live": "polite" });
  const add = h("button", { type: "button", class: "button main", id: "plan-table-add", hidden: true });
  let read = null;

  async function look() {
    try {
      const said = await ask("table", { table: text.value });
      read = said.html === undefined ? null : said;
      report.innerHTML = said.html ?? "";
      if (!read) report.replaceChildren(h("p", { class: "error" }, said.faults?.[0]?.words ?? words.offline));
    } catch {
      read = null;
      report.replaceChildren(h("p", { class: "error" }, words.offline));
    }
    add.hidden = !(read?.good > 0);
    add.textContent = read ? `${words.addRows} ${read.good} ${words.rows}` : "";
  }

  text.addEventListener("input", () => { add.hidden = true; });
  text.addEventListener("paste", () => setTimeout(look));
  add.addEventListener("click", async () => {
    await look();
    if (!read?.good) return;
    const { plan, rest } = read;
    text.value = rest;
    report.replaceChildren();
    add.hidden = true;
    replace(plan);
    if (rest === "") box.hidden = true;
    else look();
  });
  box.append(
    h("h2", { id: "plan-paste-title" }, words.paste), h("p", { class: "hint", id: "plan-table-hint" }, words.pasteHint),
    h("div", { class: "field" }, h("label", { for: "plan-table" }, words.paste), text),
    h("p", { class: "buttons" }, h("button", { type: "button", class: "button", id: "plan-table-look", onclick: look }, words.look), add, h("button", { type: "button", class: "button quiet", onclick: () => { box.hidden = true; } }, words.close)),
    report);
  return text.focus();
}
