// Where faults show: their places in words, and at the fields they are about.
import { memberWords, words } from "./words.js";

/** The entry a place in the plan's JSON belongs to, and what is left of the place below it. */
export function place(draft, at) {
  const match = /^([a-zA-Z]+)\[(\d+)\]\.?(.*)$/.exec(at);
  if (!match) return { list: null, entry: null, rel: at };
  const [, list, number, rel] = match;
  if (list === "links") {
    const link = draft.plan.links[Number(number)];
    const entry = draft.nodes().find((n) => n.id === link?.task);
    return { list: draft.plan.holds.includes(entry) ? "holds" : "tasks", entry, rel: at };
  }
  return { list, entry: draft.plan[list]?.[Number(number)], rel };
}

function placeWords(draft, at) {
  const { entry, rel } = place(draft, at);
  if (!entry) return at === "name" ? words.planName : at.startsWith("line ") ? at : words[at] ?? at;
  const member = rel.startsWith("links[") ? words.after.toLowerCase() : memberWords(rel);
  return `${entry.name || words.unnamed}${member ? `: ${member}` : ""}`;
}

/** Puts words in the place of paths in the report. */
export function mark(draft, faults, report) {
  for (const button of report.querySelectorAll(".plan-place")) button.textContent = placeWords(draft, button.dataset.at);
}

/** Opens what a fault is about and goes there. */
export function showPlace(draft, work, at) {
  const { list, entry, rel } = place(draft, at);
  if (entry) work.open(list, entry.id, rel);
}
