// What can be said of each entry of a plan, as groups of fields.
import { Fields, fill, h } from "./fields.js";
import { clocks, kinds, positions, systems, words } from "./words.js";

const HOUR = 60;

/** Everything a group of fields needs: the draft, what there is to choose from, and what to do when something changes. */
export class Shapes {
  constructor(draft, began, touched) {
    Object.assign(this, { draft, began, touched, units: new Map() });
  }

  fieldsOf(entry) {
    return new Fields(entry, (structural, path) => this.touched(structural, entry, path), (what) => this.draft.mark(what));
  }

  items() {
    return this.draft.plan.items.map((i) => [i.id, i.name || i.id]);
  }

  conditionsOf(id) {
    return this.draft.plan.items.find((i) => i.id === id)?.conditions ?? this.began.things.find((t) => t.id === id)?.conditions ?? [];
  }

  nodeChoices(except) {
    const { plan } = this.draft;
    return plan.stages.map((stage) => ({
      group: stage.name || stage.id,
      options: this.draft.nodes().filter((n) => n.stage === stage.id && n.id !== except).map((n) => [n.id, n.name || words.unnamed]),
    })).filter((g) => g.options.length > 0);
  }

  stages() {
    return this.draft.plan.stages.map((s) => [s.id, s.name || s.id]);
  }

  qualifications() {
    return this.began.qualifications.map((q) => [q, q]);
  }

  aspectRows(f, path, label) {
    return f.rows(path, label, (at) => {
      const item = f.entry && this.value(f.entry, `${at}.item`);
      const aspects = this.draft.plan.items.find((i) => i.id === item)?.aspects ?? [];
      return [f.choose(`${at}.item`, words.item, this.items(), { structural: true, none: words.pick, empty: "" }), f.choose(`${at}.name`, words.aspect, aspects.map((a) => [a, a]), { none: words.pick, empty: "" })];
    }, () => {
      const first = this.draft.plan.items.find((i) => i.aspects?.length > 0);
      return { item: first?.id ?? "", name: first?.aspects[0] ?? "" };
    });
  }

  value(entry, path) {
    return path.match(/[^.[\]]+/g).reduce((v, step) => v?.[step], entry);
  }

  /** Groups of a task: [key, title, how many, element maker]. */
  task(task) {
    const f = this.fieldsOf(task);
    return [
      ["what", words.task, null, () => this.what(f, task)],
      ["after", words.links, this.linksOf(task.id).length, () => this.links(task)],
      ["people", words.people, (task.crew?.length ?? 0) + (task.gear?.length ?? 0), () => this.people(f)],
      ["needs", words.needs, (task.needs?.length ?? 0) + (task.changes?.length ?? 0) + (task.touches?.length ?? 0), () => this.needs(f, task)],
      ["hazards", words.hazards, task.hazards?.length ?? 0, () => this.hazards(f)],
      ["readings", words.readings, task.readings?.length ?? 0, () => this.readings(f)],
      ["parts", words.parts, task.parts?.length ?? 0, () => this.parts(f)],
      ["steps", words.steps, (task.steps?.length ?? 0) + (task.cautions?.length ?? 0), () => [f.lines("steps", words.stepLines), f.lines("cautions", words.cautions)]],
      ["signoff", words.signOff, (task.standsOn?.length ?? 0) + (task.takesAgain?.length ?? 0), () => this.signOff(f)],
    ];
  }

  hold(hold) {
    const f = this.fieldsOf(hold);
    return [
      ["what", words.hold, null, () => [
        this.name(f, "holds", hold),
        h("div", { class: "fields" }, f.choose("stage", words.stage, this.stages(), { structural: true }), f.choose("releasedBy", words.releasedBy, positions), f.choose("qualification", words.qualification, this.qualifications(), { none: words.nothing })),
        f.text("asks", words.asks, { long: true }),
        h("div", { class: "choices" }, f.tick("keyCheck", words.keyCheck), f.tick("handover", words.handover)),
      ]],
      ["after", words.links, this.linksOf(hold.id).length, () => this.links(hold)],
      ["signoff", words.standsOn, (hold.standsOn?.length ?? 0) + (hold.takesAgain?.length ?? 0), () => [this.aspectRows(f, "standsOn", words.standsOn), this.takesAgain(f)]],
    ];
  }

  item(item) {
    const f = this.fieldsOf(item);
    const conditions = (item.conditions ?? []).map((c) => [c, c]);
    return [["what", words.item, null, () => [
      this.name(f, "items", item), f.text("where", words.where), f.lines("conditions", words.itemConditions),
      h("div", { class: "fields" }, f.choose("atTakeIn", words.atTakeIn, conditions, { none: words.pick, empty: "" }), f.choose("asForTheRoad", words.asForTheRoad, conditions, { none: words.pick, empty: "" })),
      f.lines("aspects", words.aspects),
      f.rows("dangers", words.dangers, (at) => [f.choose(`${at}.condition`, words.condition, conditions), f.choose(`${at}.hazard`, words.hazard, this.began.hazards.map((z) => [z.id, z.name]))], () => ({ condition: item.conditions?.[0] ?? "", hazard: this.began.hazards[0]?.id ?? "" })),
    ]]];
  }

  part(part) {
    const f = this.fieldsOf(part);
    return [["what", words.part, null, () => [this.name(f, "parts", part), f.number("leadDays", words.leadDays, { empty: 0 })]]];
  }

  stage(stage) {
    const f = this.fieldsOf(stage);
    return [["what", words.stageName, null, () => [this.name(f, "stages", stage), f.text("customerName", words.customerName), f.choose("system", words.system, systems)]]];
  }

  name(f, list, entry) {
    return f.text("name", words.name, { onDone: () => { this.draft.rename(list, entry); this.touched("soon", entry, "name"); } });
  }

  what(f, task) {
    return [
      this.name(f, "tasks", task),
      h("div", { class: "fields" }, f.choose("stage", words.stage, this.stages(), { structural: true }), f.choose("place", words.place, [["car", words.atCar], ...this.began.places.map((p) => [p, p])])),
      this.inUnit(f, task.id + "|estimate", task.estimate?.usual, (scale) => [f.number("estimate.low", words.low, { scale }), f.number("estimate.usual", words.usual, { scale }), f.number("estimate.high", words.high, { scale })]),
    ];
  }

  /** Fields in minutes or hours, whichever is chosen. */
  inUnit(f, key, minutes, make) {
    const whole = typeof minutes === "number" && minutes >= HOUR && minutes % 30 === 0;
    const scale = this.units.get(key) ?? (whole ? HOUR : 1);
    const select = h("select", { "data-key": key, onchange: () => { this.units.set(key, Number(select.value)); this.touched(true, f.entry, "unit"); } });
    fill(select, [["1", words.minutes], [String(HOUR), words.hours]], String(scale));
    const label = h("label", {}, words.unit);
    select.id = `plan-unit-${key.replace(/[^a-z0-9]+/gi, "-")}`;
    label.htmlFor = select.id;
    return h("div", { class: "fields plan-amount" }, ...make(scale), h("div", { class: "field" }, label, select));
  }

  linksOf(node) {
    return this.draft.plan.links.filter((l) => l.task === node || l.after === node);
  }

  links(node) {
    const { plan } = this.draft;
    const half = (mine, other, title) => h("div", { class: "plan-rows" }, h("h4", {}, title),
      ...plan.links.map((link, n) => (link[mine] === node.id ? this.link(node, link, n, other) : null)).filter(Boolean), this.addLink(node, mine, other));
    return [half("task", "after", words.after), half("after", "task", words.before)];
  }

  link(node, link, n, other) {
    const f = new Fields(link, (structural, path) => this.touched(structural, node, path), (what) => this.draft.mark(what ? `link ${n} ${what}` : null));
    const named = (control) => { for (const c of control.querySelectorAll("[data-at]")) c.dataset.at = `links[${n}].${c.dataset.at}`; return control; };
    const row = [
      named(f.choose(other, other === "after" ? words.after : words.before, this.nodeChoices(node.id), { structural: true })),
      named(f.choose("kind", words.kind, kinds)),
      this.inUnit(f, `link ${link.task} ${link.after} ${link.kind}`, Math.abs(link.lag ?? 0), (scale) => [named(f.number("lag", words.lag, { scale, empty: 0 }))]),
      named(f.choose("clock", words.clock, clocks)),
    ];
    return h("div", { class: "plan-row", "data-link": String(n) }, h("div", { class: "fields" }, ...row),
      h("button", { type: "button", class: "button quiet", "data-key": `link-out-${n}`, onclick: () => { this.draft.mark(null); this.draft.plan.links.splice(n, 1); this.touched(true, node, "links"); } }, words.takeOut));
  }

  addLink(node, mine, other) {
    const select = h("select", { "data-key": `link-add-${mine}`, "data-plan-link": mine, onchange: () => {
      if (select.value === "") return;
      this.draft.mark(null);
      this.draft.plan.links.push({ task: node.id, after: node.id, [other]: select.value, kind: "finish-start", lag: 0, clock: "working" });
      this.touched(true, node, "links");
    } });
    fill(select, this.nodeChoices(node.id), "", words.pick);
    select.id = `plan-link-${mine}-${node.id}`;
    return h("div", { class: "field" }, h("label", { for: select.id }, mine === "task" ? words.addAfter : words.addBefore), select);
  }

  people(f) {
    return [
      f.rows("crew", words.crew, (at) => [f.text(`${at}.duty`, words.duty), f.choose(`${at}.qualification`, words.qualification, this.qualifications(), { none: words.nothing }), f.number(`${at}.count`, words.count, { empty: 1 })], () => ({ duty: f.entry.crew?.length ? "hand" : "lead", count: 1 })),
      f.rows("gear", words.gear, (at) => [f.choose(`${at}.kind`, words.gearKind, this.began.gear.map((g) => [g, g])), f.number(`${at}.minRatedKg`, words.rated)], () => ({ kind: this.began.gear[0] ?? "hoist" })),
    ];
  }

  needs(f, task) {
    const items = this.items();
    const first = this.draft.plan.items[0];
    return [
      f.rows("needs", words.needsItem, (at) => [
        f.choose(`${at}.item`, words.item, [...items, ...this.began.things.map((t) => [t.id, t.name])], { structural: true, none: words.pick, empty: "" }),
        f.several(`${at}.conditions`, words.conditions, this.conditionsOf(this.value(task, `${at}.item`))),
      ], () => ({ item: first?.id ?? "", conditions: [] })),
      f.rows("changes", words.changes, (at) => {
        const conditions = this.conditionsOf(this.value(task, `${at}.item`));
        const pairs = conditions.map((c) => [c, c]);
        return [
          f.choose(`${at}.item`, words.item, items, { structural: true, none: words.pick, empty: "" }), f.choose(`${at}.from`, words.from, pairs, { none: words.pick, empty: "" }),
          f.choose(`${at}.to`, words.to, pairs, { none: words.pick, empty: "" }), f.several(`${at}.through`, words.through, conditions),
        ];
      }, () => ({ item: first?.id ?? "", from: first?.conditions?.[0] ?? "", to: first?.conditions?.[1] ?? "", through: [] })),
      this.aspectRows(f, "touches", words.touches),
    ];
  }

  hazards(f) {
    const readings = this.draft.plan.tasks.flatMap((t) => (t.readings ?? []).map((r) => [`${t.id}/${r.id}`, `${t.name}: ${r.name}`]));
    return [f.rows("hazards", words.hazards, (at) => [f.choose(`${at}.hazard`, words.hazard, this.began.hazards.map((z) => [z.id, z.name]), { none: words.pick, empty: "" }), f.choose(`${at}.endsByReading`, words.endsBy, readings, { none: words.none })], () => ({ hazard: "" }))];
  }

  readings(f) {
    return [f.rows("readings", words.readings, (at) => [
      f.text(`${at}.name`, words.reading), f.choose(`${at}.unit`, words.readingUnit, this.began.units.map((u) => [u, u]), { none: words.pick, empty: "" }),
      f.number(`${at}.min`, words.min), f.number(`${at}.max`, words.max), f.text(`${at}.source`, words.source), f.text(`${at}.tool`, words.tool), f.text(`${at}.where`, words.where), f.text(`${at}.takenWhen`, words.takenWhen),
      h("div", { class: "choices" }, f.tick(`${at}.calibrated`, words.calibrated), f.tick(`${at}.holdsWhenTooClose`, words.holdsTooClose), f.tick(`${at}.seenByTwo`, words.seenByTwo)),
      this.aspectRows(f, `${at}.standsOn`, words.standsOn),
    ], () => ({ id: this.readingId(f.entry), name: "", unit: "", source: "", standsOn: [] }))];
  }

  readingId(task) {
    for (let n = (task.readings?.length ?? 0) + 1; ; n++) if (!(task.readings ?? []).some((r) => r.id === `reading-${n}`)) return `reading-${n}`;
  }

  parts(f) {
    return [f.rows("parts", words.part, (at) => [f.choose(at, words.part, this.draft.plan.parts.map((p) => [p.id, p.name || p.id]), { none: words.pick, empty: "" })], () => this.draft.plan.parts[0]?.id ?? "")];
  }

  takesAgain(f) {
    return f.rows("takesAgain", words.takesAgain, (at) => [f.choose(at, words.takesAgain, this.nodeChoices(f.entry.id), { none: words.pick, empty: "" })], () => "");
  }

  signOff(f) {
    return [
      h("div", { class: "choices" }, f.tick("secondCheck", words.secondCheck), f.tick("nowAndThen", words.nowAndThen), f.tick("runsThrough", words.runsThrough)),
      f.choose("secondCheckQualification", words.secondQualification, this.qualifications(), { none: words.nothing }),
      this.aspectRows(f, "standsOn", words.standsOn), this.takesAgain(f), f.lines("howLeft", words.howLeft),
    ];
  }
}
