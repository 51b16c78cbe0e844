// The draft of a plan: kept on this device with every change, so that nothing typed is lost; can be undone step by step.
const MOST_STEPS = 60;

export const lists = ["tasks", "holds", "items", "parts", "stages"];

export class Draft {
  constructor(key, began) {
    this.key = key;
    this.began = began;
    this.steps = [];
    this.full = false;
    const kept = this.#read();
    this.keptAt = kept?.at ?? null;
    this.plan = kept?.plan ?? structuredClone(began.plan);
    this.origin = kept?.origin ?? began.plan;
    this.of = kept?.of ?? began.planAt;
    this.settled = JSON.stringify(this.plan);
  }

  #read() {
    try {
      return JSON.parse(localStorage.getItem(this.key));
    } catch {
      return null;
    }
  }

  /** Remembers where undo leads back to; typing in one field is one step. */
  mark(what) {
    if (this.lastMark === what && what) return;
    this.lastMark = what;
    const now = JSON.stringify(this.plan);
    if (this.steps.at(-1) === now) return;
    this.steps.push(now);
    if (this.steps.length > MOST_STEPS) this.steps.shift();
  }

  undo() {
    const before = this.steps.pop();
    if (!before) return false;
    this.plan = JSON.parse(before);
    this.lastMark = null;
    this.keep();
    return true;
  }

  keep() {
    try {
      localStorage.setItem(this.key, JSON.stringify({ plan: this.plan, origin: this.origin, of: this.of, at: Date.now() }));
      this.full = false;
    } catch {
      this.full = true;
    }
  }

  drop() {
    localStorage.removeItem(this.key);
  }

  replace(plan, step) {
    this.mark(step ?? null);
    this.plan = plan;
    this.lastMark = null;
    this.keep();
  }

  entry(list, id) {
    return this.plan[list].find((e) => e.id === id);
  }

  nodes() {
    return [...this.plan.tasks, ...this.plan.holds];
  }

  nameOf(id) {
    return this.nodes().find((n) => n.id === id)?.name || id;
  }

  isNew(list, id) {
    return !this.origin[list].some((e) => e.id === id);
  }

  freeId(list, name, otherwise) {
    const bare = name.normalize("NFD").toLowerCase().replace(/[\u0300-\u036f'’.]/g, "").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 56).replace(/-$/, "") || otherwise;
    const taken = new Set((list === "tasks" || list === "holds" ? this.nodes() : this.plan[list]).map((e) => e.id).concat(list === "tasks" ? ["plan"] : []));
    if (!taken.has(bare)) return bare;
    for (let n = 2; ; n++) if (!taken.has(`${bare}-${n}`)) return `${bare}-${n}`;
  }

  /** A new entry takes its id from its name, and everything that names it follows. */
  rename(list, entry) {
    if (!this.isNew(list, entry.id)) return entry.id;
    const before = entry.id;
    entry.id = "";
    const id = this.freeId(list, entry.name, list.replace(/s$/, ""));
    entry.id = id;
    if (before === id) return id;
    this.onRename?.(list, before, id);
    const swap = (name) => (name === before ? id : name);
    const { plan } = this;
    if (list === "tasks" || list === "holds") {
      for (const link of plan.links) [link.task, link.after] = [swap(link.task), swap(link.after)];
      for (const node of this.nodes()) node.takesAgain = (node.takesAgain ?? []).map(swap);
      for (const task of plan.tasks) for (const h of task.hazards ?? []) if (h.endsByReading?.startsWith(before + "/")) h.endsByReading = id + h.endsByReading.slice(before.length);
    } else if (list === "stages") {
      for (const node of this.nodes()) node.stage = swap(node.stage);
    } else if (list === "parts") {
      for (const task of plan.tasks) task.parts = (task.parts ?? []).map(swap);
    } else {
      for (const task of plan.tasks) {
        for (const of of [...(task.needs ?? []), ...(task.changes ?? []), ...(task.touches ?? []), ...(task.standsOn ?? []), ...(task.readings ?? []).flatMap((r) => r.standsOn ?? [])]) of.item = swap(of.item);
      }
      for (const hold of plan.holds) for (const of of hold.standsOn ?? []) of.item = swap(of.item);
    }
    return id;
  }

  takeOut(list, id) {
    this.plan[list] = this.plan[list].filter((e) => e.id !== id);
    if (list === "tasks" || list === "holds") this.plan.links = this.plan.links.filter((l) => l.task !== id && l.after !== id);
  }
}

/** The value at a path such as crew[0].duty. */
export function at(entry, path) {
  return path.match(/[^.[\]]+/g).reduce((value, step) => value?.[step], entry);
}

/** Sets the value at a path; nothing takes it away. */
export function put(entry, path, value) {
  const steps = path.match(/[^.[\]]+/g);
  const last = steps.pop();
  let of = entry;
  for (const step of steps) of = of[step] ??= {};
  if (value === undefined) delete of[last];
  else of[last] = value;
}
