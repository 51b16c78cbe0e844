// Fields of the plan screen: each shows one value of an entry and writes what is typed back at once. What cannot be read as a
// number stays as it was typed, and the board says so.
import { at, put } from "./draft.js";
import { words } from "./words.js";

let count = 0;

export function h(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name in element && typeof value !== "string") element[name] = value;
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.filter((c) => c !== null && c !== undefined));
  return element;
}

function field(label, control, hint) {
  control.id ||= `plan-field-${++count}`;
  return h("div", { class: "field" }, h("label", { for: control.id }, label), control, hint ? h("p", { class: "hint" }, hint) : null);
}

export class Fields {
  /** @param touched called with (structural, key) after each change */
  constructor(entry, touched, mark) {
    Object.assign(this, { entry, touched, mark });
  }

  #write(path, value, structural) {
    this.mark(structural ? null : `${this.entry.id}|${path}`);
    put(this.entry, path, value);
    this.touched(structural, path);
  }

  text(path, label, { hint, onDone, long } = {}) {
    const value = at(this.entry, path) ?? "";
    const control = h(long ? "textarea" : "input", { "data-at": path, rows: long ? "3" : undefined, maxlength: long ? undefined : "200", oninput: () => this.#write(path, control.value), onchange: () => onDone?.() });
    control.value = value;
    return field(label, control, hint);
  }

  lines(path, label, hint) {
    const control = h("textarea", { "data-at": path, rows: "3", oninput: () => this.#write(path, control.value.split("\n").filter((l) => l.trim() !== "")), onchange: () => this.touched("soon", path) });
    control.value = (at(this.entry, path) ?? []).join("\n");
    return field(label, control, hint);
  }

  number(path, label, { scale = 1, empty, hint } = {}) {
    const value = at(this.entry, path);
    const control = h("input", { "data-at": path, inputmode: "decimal", oninput: () => this.#write(path, read(control.value)) });
    const read = (typed) => {
      if (typed.trim() === "") return empty;
      const number = Number(typed.trim().replace(",", "."));
      return Number.isFinite(number) && /\d/.test(typed) ? Math.round(number * scale * 1e6) / 1e6 : typed;
    };
    control.value = value === undefined || value === null ? "" : typeof value === "number" ? String(Math.round((value / scale) * 1e4) / 1e4) : value;
    return field(label, control, hint);
  }

  choose(path, label, options, { structural, none, empty } = {}) {
    const value = at(this.entry, path) ?? "";
    const control = h("select", { "data-at": path, onchange: () => this.#write(path, control.value === "" ? empty : control.value, structural) });
    fill(control, options, value, none);
    return field(label, control);
  }

  tick(path, label) {
    const control = h("input", { type: "checkbox", "data-at": path, onchange: () => this.#write(path, control.checked) });
    control.checked = Boolean(at(this.entry, path));
    return h("label", { class: "choice" }, control, label);
  }

  /** Several of a few words, each a box. */
  several(path, label, options) {
    const chosen = () => at(this.entry, path) ?? [];
    const all = [...new Set([...options, ...chosen()])];
    return h("fieldset", { class: "field", "data-at": path }, h("legend", {}, label), h("div", { class: "choices" }, ...all.map((option) => {
      const box = h("input", { type: "checkbox", "data-at": path, "data-value": option, onchange: () => this.#write(path, all.filter((o) => (o === option ? box.checked : chosen().includes(o)))) });
      box.checked = chosen().includes(option);
      return h("label", { class: "choice" }, box, option);
    })));
  }

  /** A list of rows that can be added to and taken from. */
  rows(path, label, one, blank) {
    const list = at(this.entry, path) ?? [];
    return h("div", { class: "plan-rows", "data-at": path }, label ? h("h4", {}, label) : null,
      ...list.map((_, n) => h("div", { class: "plan-row" }, h("div", { class: "fields" }, ...one(`${path}[${n}]`, n)),
        h("button", { type: "button", class: "button quiet", "data-key": `${path}-out-${n}`, "aria-label": `${words.takeOut}: ${label} ${n + 1}`, onclick: () => this.#write(path, list.filter((_, m) => m !== n), true) }, words.takeOut))),
      h("button", { type: "button", class: "button", "data-key": `${path}-add`, onclick: () => this.#write(path, [...list, blank()], true) }, words.adding[path.split(".").at(-1)] ?? words.add));
  }
}

/** Fills a select; a value that is not among the options is kept as one more. */
export function fill(select, options, value, none) {
  select.replaceChildren();
  if (none !== undefined) select.append(h("option", { value: "" }, none));
  const flat = [];
  for (const option of options) {
    if (option.group !== undefined) {
      select.append(h("optgroup", { label: option.group }, ...option.options.map(([id, name]) => h("option", { value: id }, name))));
      flat.push(...option.options.map(([id]) => id));
    } else {
      select.append(h("option", { value: option[0] }, option[1]));
      flat.push(option[0]);
    }
  }
  if (value !== "" && !flat.includes(value)) select.append(h("option", { value }, `“${value}”`));
  select.value = value;
}
