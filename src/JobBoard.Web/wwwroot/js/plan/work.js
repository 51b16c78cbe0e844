// The plan itself: stages with their tasks and hold points, then items, parts and stages. Each entry opens in place.
import { h } from "./fields.js";
import { place } from "./faults.js";
import { words } from "./words.js";

const shapeOf = { tasks: "task", holds: "hold", items: "item", parts: "part", stages: "stage" };
const titles = { items: words.items, parts: words.parts, stages: words.stages };
const blanks = {
  tasks: (stage) => ({ name: "", stage, estimate: { low: 30, usual: 60, high: 120 }, place: "car", crew: [{ duty: "lead", count: 1 }] }),
  holds: (stage) => ({ name: "", stage, releasedBy: "foreman", asks: "", standsOn: [], takesAgain: [] }),
  items: () => ({ name: "", conditions: [], atTakeIn: "", asForTheRoad: "", aspects: [], dangers: [] }),
  parts: () => ({ name: "", leadDays: 0 }),
  stages: () => ({ name: "", customerName: "" }),
};

const keyOf = (list, entry) => `${list}:${entry.id}`;

export class Work {
  constructor(root, draft, began, shapes, touched, ask) {
    Object.assign(this, { root, draft, began, shapes, touched, ask, opened: new Map(), sections: new Set(), found: [], pressed: false });
    draft.onRename = (list, before, id) => this.#renamed(`${list}:${before}`, `${list}:${id}`);
    document.addEventListener("pointerdown", () => { this.pressed = true; }, true);
    for (const end of ["pointerup", "pointercancel"]) document.addEventListener(end, () => { this.pressed = false; }, true);
  }

  #renamed(before, after) {
    if (this.opened.has(before)) this.opened.set(after, this.opened.get(before));
    this.opened.delete(before);
    const row = this.root.querySelector(`[data-entry="${before}"]`);
    if (row) row.dataset.entry = after;
  }

  /** Drawn anew, but never under a finger that is going down or a list that was just opened: what was tapped is still there. */
  renderSoon() {
    clearTimeout(this.soon);
    const active = document.activeElement;
    if (this.pressed || (active?.matches("select") && this.root.contains(active))) this.soon = setTimeout(() => this.renderSoon(), 150);
    else this.render();
  }

  render() {
    clearTimeout(this.soon);
    const focus = this.#focus();
    const { plan } = this.draft;
    const loose = this.draft.nodes().filter((n) => !plan.stages.some((s) => s.id === n.stage));
    this.root.replaceChildren(
      ...plan.stages.map((stage) => this.#stage(stage.id, stage.name || words.unnamed, this.draft.nodes().filter((n) => n.stage === stage.id))),
      ...(loose.length > 0 ? [this.#stage("", words.unnamed, loose)] : []),
      ...["items", "parts", "stages"].map((list) => this.#section(list)));
    this.#mark();
    this.#refocus(focus);
  }

  #stage(id, name, nodes) {
    const section = h("section", { class: "plan-stage section" }, h("h2", {}, name), h("div", { class: "rows" }, ...nodes.map((node) => this.#row(this.draft.plan.holds.includes(node) ? "holds" : "tasks", node))));
    if (id) section.append(h("button", { type: "button", class: "button", "data-key": `add-${id}`, onclick: () => this.add("tasks", id) }, words.addHere));
    return section;
  }

  #section(list) {
    const entries = this.draft.plan[list];
    const section = h("details", { class: "fold section", id: `plan-${list}`, ontoggle: () => (section.open ? this.sections.add(list) : this.sections.delete(list)) },
      h("summary", {}, h("h2", {}, titles[list]), h("span", { class: "fold-note" }, String(entries.length))),
      h("div", { class: "fold-body" }, h("div", { class: "rows" }, ...entries.map((e) => this.#row(list, e))), h("button", { type: "button", class: "button", "data-key": `add-${list}`, onclick: () => this.add(list) }, words[{ items: "newItem", parts: "newPart", stages: "newStage" }[list]])));
    section.open = this.sections.has(list);
    return section;
  }

  #row(list, entry) {
    const key = keyOf(list, entry);
    const row = h("details", { class: "row-fold plan-entry", "data-entry": key, ontoggle: () => this.#toggle(row, list, entry) },
      h("summary", { class: "row" }, h("span", { class: "row-main" }, h("span", { class: "row-title" }), h("span", { class: "row-note" })), h("span", { class: "row-side" })));
    this.#words(row, list, entry);
    if (this.opened.has(key)) {
      row.open = true;
      row.append(this.#body(list, entry));
    }
    return row;
  }

  #toggle(row, list, entry) {
    const key = keyOf(list, entry);
    const body = row.querySelector(":scope > .fold-body");
    if (row.open && !body) {
      if (!this.opened.has(key)) this.opened.set(key, new Set(["what"]));
      row.append(this.#body(list, entry));
      this.#mark();
    } else if (!row.open) {
      this.opened.delete(key);
      body?.remove();
    }
  }

  #words(row, list, entry) {
    row.querySelector(".row-title").textContent = entry.name || words.unnamed;
    row.querySelector(".row-note").textContent = this.#note(list, entry);
  }

  #note(list, entry) {
    const { plan } = this.draft;
    if (list === "items") return (entry.conditions ?? []).join(", ");
    if (list === "parts" || list === "stages") return "";
    const after = plan.links.filter((l) => l.task === entry.id).map((l) => this.draft.nameOf(l.after));
    const e = entry.estimate;
    const what = list === "holds" ? words.hold : `${e?.low ?? ""}, ${e?.usual ?? ""}, ${e?.high ?? ""} min`;
    const begun = this.began.begun.includes(entry.id) ? " · begun or released" : "";
    return `${what}${after.length > 0 ? ` · after ${after.join(", ")}` : ""}${begun}`;
  }

  #body(list, entry) {
    const open = this.opened.get(keyOf(list, entry)) ?? new Set(["what"]);
    const begun = this.began.begun.includes(entry.id);
    const body = h("div", { class: "fold-body plan-body" }, begun ? h("p", { class: "notice" }, words.begun) : null);
    for (const [name, title, many, make] of this.shapes[shapeOf[list]](entry)) {
      const group = h("details", { class: "fold plan-group", "data-group": name, ontoggle: () => { (group.open ? open.add(name) : open.delete(name)); fillGroup(); } },
        h("summary", {}, h("h3", {}, title), many === null ? null : h("span", { class: "fold-note" }, many === 0 ? "" : String(many))));
      const fillGroup = () => {
        if (!group.open || group.children.length > 1) return;
        const fields = h("fieldset", { class: "fold-body form", disabled: begun && name !== "after" }, ...make());
        group.append(fields);
        this.#mark();
      };
      group.open = open.has(name);
      fillGroup();
      body.append(group);
    }
    if (list === "tasks") body.append(this.#reach(entry));
    if (!begun) body.append(h("p", {}, h("button", { type: "button", class: "button quiet", "data-key": "take-out", onclick: () => { this.draft.mark(null); this.draft.takeOut(list, entry.id); this.opened.delete(keyOf(list, entry)); this.touched(true); } }, list === "tasks" ? words.takeOutTask : list === "holds" ? words.takeOutHold : words.takeOut)));
    return body;
  }

  /** What can no longer be reached once a task is done, asked when wanted. */
  #reach(task) {
    const answer = h("ul", { class: "plan-list", "aria-live": "polite" });
    const look = async () => {
      let said;
      try {
        said = await this.ask("reach", { task: task.id });
      } catch {
        said = { faults: [{ words: words.offline }] };
      }
      const reached = said.reached ?? [];
      answer.replaceChildren(...(said.reached ? [] : [h("li", {}, said.faults?.[0]?.words ?? words.offline)]), ...(said.reached && reached.length === 0 ? [h("li", {}, words.reachNone)] : []), ...reached.map((r) => h("li", {}, h("p", {}, r.words), r.isBefore ? null
        : h("button", { type: "button", class: "button", onclick: () => { this.draft.mark(null); this.draft.plan.links.push({ task: task.id, after: r.task, kind: "finish-start", lag: 0, clock: "working" }); this.touched(true, task); } }, words.reachBefore))));
    };
    return h("div", { class: "plan-reach" }, h("button", { type: "button", class: "button", "data-key": "reach", onclick: look }, words.reachAsk), answer);
  }

  add(list, stage) {
    this.draft.mark(null);
    const entry = { id: this.draft.freeId(list, "", { tasks: "task", holds: "hold", items: "item", parts: "part", stages: "stage" }[list]), ...blanks[list](stage ?? this.draft.plan.stages.at(-1)?.id ?? "") };
    this.draft.plan[list].push(entry);
    if (list in titles) this.sections.add(list);
    this.opened.set(`${list}:${entry.id}`, new Set(["what", ...(list === "tasks" || list === "holds" ? ["after"] : [])]));
    this.touched(true, entry);
    this.root.querySelector(`[data-entry="${list}:${entry.id}"] [data-at="name"]`)?.focus();
  }

  open(list, id, rel) {
    if (list in titles) this.sections.add(list);
    const key = `${list}:${id}`;
    const groups = this.opened.get(key) ?? new Set();
    for (const group of this.#groupsOf(rel)) groups.add(group);
    this.opened.set(key, groups);
    this.render();
    const row = this.root.querySelector(`[data-entry="${key}"]`);
    const control = this.#control(row, rel);
    (control ?? row)?.scrollIntoView({ block: "center" });
    (control ?? row?.querySelector("summary"))?.focus({ preventScroll: true });
  }

  #groupsOf(rel) {
    if (rel.startsWith("links")) return ["after"];
    const first = rel.split(/[.[]/)[0];
    return [{ crew: "people", gear: "people", needs: "needs", changes: "needs", touches: "needs", hazards: "hazards", readings: "readings", parts: "parts", steps: "steps", cautions: "steps", standsOn: "signoff", takesAgain: "signoff", secondCheck: "signoff" }[first] ?? "what"];
  }

  #control(row, rel) {
    for (let path = rel; path; path = path.replace(/(\.[^.[\]]+|\[\d+\])$/, "")) {
      const found = [...(row?.querySelectorAll(`[data-at="${CSS.escape(path)}"]`) ?? [])].find((c) => c.matches("input, select, textarea")) ?? row?.querySelector(`[data-at^="${CSS.escape(path)}"]:is(input, select, textarea)`);
      if (found) return found;
      if (!/[.[]/.test(path)) break;
    }
    return null;
  }

  /** The words of one entry's row, without touching its fields. */
  freshen(entry) {
    for (const list of Object.keys(shapeOf)) {
      if (!entry || !this.draft.plan[list].includes(entry)) continue;
      const row = this.root.querySelector(`[data-entry="${list}:${entry.id}"]`);
      if (row) this.#words(row, list, entry);
    }
  }

  faults(found) {
    this.found = found;
    this.#mark();
  }

  #mark() {
    for (const side of this.root.querySelectorAll(".plan-entry > summary .row-side")) side.textContent = "";
    for (const control of this.root.querySelectorAll("[aria-invalid]")) control.removeAttribute("aria-invalid");
    for (const error of this.root.querySelectorAll(".plan-error")) error.remove();
    const many = new Map();
    for (const fault of this.found) {
      const { list, entry, rel } = place(this.draft, fault.at);
      if (!entry) continue;
      const key = `${list}:${entry.id}`;
      many.set(key, (many.get(key) ?? 0) + 1);
      const row = this.root.querySelector(`[data-entry="${key}"]`);
      const control = row?.open ? this.#control(row, rel) : null;
      if (!control) continue;
      control.setAttribute("aria-invalid", "true");
      control.closest(".field")?.append(h("p", { class: "error plan-error" }, fault.words));
    }
    for (const [key, n] of many) {
      const side = this.root.querySelector(`[data-entry="${key}"] > summary .row-side`);
      if (side) side.textContent = n === 1 ? "1 fault" : `${n} faults`;
    }
  }

  #focus() {
    const active = document.activeElement;
    if (!this.root.contains(active)) return null;
    const { key, at } = active.dataset;
    return { entry: active.closest("[data-entry]")?.dataset.entry, key, at, start: active.selectionStart };
  }

  #refocus(focus) {
    if (!focus) return;
    const within = (focus.entry && this.root.querySelector(`[data-entry="${focus.entry}"]`)) || this.root;
    const again = focus.at ? within.querySelector(`[data-at="${CSS.escape(focus.at)}"]:is(input, select, textarea)`) : focus.key ? within.querySelector(`[data-key="${CSS.escape(focus.key)}"]`) : within.querySelector("summary");
    again?.focus({ preventScroll: true });
    if (focus.start !== undefined && focus.start !== null && again?.matches('input:not([type="checkbox"]), textarea')) again.setSelectionRange(focus.start, focus.start);
  }
}
