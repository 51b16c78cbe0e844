// The plan screen: a draft kept on this device, looked over by the board while it is typed, made whole or not at all.
import { newId } from "../forms.js";
import { seen } from "../live.js";
import { Draft } from "./draft.js";
import { h } from "./fields.js";
import { mark, showPlace } from "./faults.js";
import { openPaste } from "./paste.js";
import { Shapes } from "./shapes.js";
import { words } from "./words.js";
import { Work } from "./work.js";

const QUIET = 450;
const PATIENCE = 20000;
const page = document.getElementById("plan-page");
const by = (id) => document.getElementById(id);
const token = () => document.querySelector('meta[name="antiforgery"]')?.content ?? "";

let draft;
let work;
let began;
let timer;
let round = 0;
let report = null;
let command = null;

/** Asks the board something about the draft. */
async function ask(what, fields) {
  const body = new FormData();
  for (const [name, value] of Object.entries({ plan: JSON.stringify(draft.plan), car: page.dataset.car ?? "", __RequestVerificationToken: token(), ...fields })) body.set(name, value);
  const response = await fetch(`/plans/look/${what}`, { method: "POST", body, headers: { Accept: "application/json" }, signal: AbortSignal.timeout(PATIENCE) });
  return { status: response.status, ...(await response.json()) };
}

function touched(structural, entry, path) {
  command = null;
  draft.keep();
  if (structural === "soon") work.renderSoon();
  else if (structural) work.render();
  else work.freshen(entry);
  by("plan-bar").querySelector('[data-plan-do="undo"]').disabled = draft.steps.length === 0;
  clearTimeout(timer);
  timer = setTimeout(check, QUIET);
  if (draft.full) notice(words.full);
  return path;
}

async function check() {
  const mine = ++round;
  by("plan-sum").textContent = words.checking;
  page.dataset.checked = "";
  try {
    const said = await ask("check", { of: String(draft.of) });
    if (mine !== round) return;
    if (said.html === undefined) throw new Error(said.faults?.[0]?.words);
    report = said;
    by("plan-report").innerHTML = said.html;
    mark(draft, said.faults, by("plan-report"));
    work.faults(said.faults);
    by("plan-sum").textContent = said.ready ? `${said.sum} · ${said.ready.split(". It was")[0].replace("Earliest ready: ", "")}` : said.sum;
    page.dataset.checked = said.clean ? "clean" : "faults";
    makeForm();
  } catch (problem) {
    if (mine !== round) return;
    by("plan-sum").textContent = problem?.message && problem.name === "Error" ? problem.message : words.offline;
    setTimeout(() => { if (mine === round) check(); }, PATIENCE / 4);
  }
}

function notice(text) {
  const kept = by("plan-kept");
  kept.replaceChildren(h("p", {}, text));
  kept.hidden = false;
}

/** The form under the report: what is typed in it stays while it is made anew. */
function makeForm() {
  const form = by("plan-make");
  const car = page.dataset.car;
  if (!form.firstChild) {
    form.append(
      car ? h("div", { class: "field" }, h("label", { for: "plan-why" }, words.why), h("input", { id: "plan-why", name: "why", maxlength: "400" }))
        : h("div", { class: "field" }, h("label", { for: "plan-name" }, words.templateName), h("input", { id: "plan-name", name: "name", maxlength: "80" })),
      h("button", { type: "submit", class: "button main", id: "plan-do" }, car ? words.make : words.save),
      ...(car ? [h("details", { class: "ask" }, h("summary", { class: "button" }, words.saveCopy), h("div", { class: "ask-body form" },
        h("div", { class: "field" }, h("label", { for: "plan-copy" }, words.templateName), h("input", { id: "plan-copy", maxlength: "80" })),
        h("button", { type: "button", class: "button main", id: "plan-copy-do", onclick: () => saveTemplate(by("plan-copy").value) }, words.save)))] : []),
      h("div", { class: "answer", id: "plan-answer", role: "status" }));
    if (!car) {
      by("plan-name").value = draft.plan.name;
      by("plan-name").addEventListener("input", () => { draft.mark("name"); draft.plan.name = by("plan-name").value; touched(false, null, "name"); });
    }
    form.addEventListener("submit", (event) => { event.preventDefault(); if (car) makeChange(); else saveTemplate(by("plan-name").value); });
  }
  by("plan-do").disabled = car ? !(report?.clean && report.differs) : false;
}

async function send(kind, fields) {
  const body = new FormData();
  command ??= newId();
  for (const [name, value] of Object.entries({ command, seen: String(seen()), __RequestVerificationToken: token(), ...fields })) body.set(name, value);
  try {
    const response = await fetch(`/do/${kind}`, { method: "POST", body, headers: { Accept: "application/json" }, signal: AbortSignal.timeout(PATIENCE) });
    const said = await response.json();
    if (!["unavailable", "pin"].includes(said.outcome)) command = null;
    if (said.outcome !== "done") by("plan-answer").innerHTML = said.html;
    return said;
  } catch {
    by("plan-answer").replaceChildren(h("div", { class: "notice strong" }, h("p", {}, words.notSent)));
    return { outcome: "not-sent" };
  }
}

async function makeChange() {
  const why = by("plan-why");
  const said = await send("revise-plan", { car: page.dataset.car, of: String(draft.of), plan: JSON.stringify(draft.plan), why: why.value });
  why.removeAttribute("aria-invalid");
  if (said.outcome === "done") {
    draft.drop();
    sessionStorage.setItem("plan-made", words.made);
    location.reload();
  } else if ((said.faults ?? []).some((f) => f.field === "why")) {
    why.setAttribute("aria-invalid", "true");
    why.focus();
  } else {
    check();
  }
}

async function saveTemplate(name) {
  const template = page.dataset.template;
  const plan = structuredClone(draft.plan);
  plan.name = name.trim();
  const reserved = ["new", "begin", "look"];
  if (!template || name.trim() !== began.plan.name) plan.id = idOf(name, reserved);
  const said = await send("save-template", { plan: JSON.stringify(plan) });
  if (said.outcome !== "done") return;
  by("plan-answer").replaceChildren(h("div", { class: "notice" }, h("p", {}, words.saved + " "), h("p", {}, h("a", { class: "button", href: `/cars/new?template=${plan.id}` }, words.start), " ", h("a", { class: "button", href: `/plans/${plan.id}` }, words.open))));
  if (!page.dataset.car) draft.drop();
}

function idOf(name, reserved) {
  const bare = name.normalize("NFD").toLowerCase().replace(/[\u0300-\u036f'’.]/g, "").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 56) || "plan";
  return reserved.includes(bare) ? `${bare}-plan` : bare;
}

async function mend(button) {
  const fault = button.closest("[data-fault-at]").dataset;
  const said = await ask("mend", { code: fault.faultCode, at: fault.faultAt, words: fault.faultWords, number: button.dataset.number });
  if (said.plan) replace(said.plan);
  else check();
}

async function takeIn() {
  const said = await ask("merge", { origin: JSON.stringify(draft.origin) });
  if (!said.plan) return check();
  draft.origin = said.origin;
  draft.of = said.planAt;
  replace(said.plan);
  if (said.both.length > 0) notice(`${words.bothChanged} ${said.both.join(", ")}`);
  return null;
}

function replace(plan) {
  draft.replace(plan);
  if (by("plan-name")) by("plan-name").value = plan.name;
  touched(true);
}

function drop() {
  const kept = by("plan-kept");
  kept.replaceChildren(h("p", {}, words.dropAsk), h("p", { class: "buttons" },
    h("button", { type: "button", class: "button main", id: "plan-drop", onclick: () => { draft.drop(); location.reload(); } }, words.drop),
    h("button", { type: "button", class: "button", onclick: () => { kept.hidden = true; } }, words.keep)));
  kept.hidden = false;
  kept.querySelector("button").focus();
}

const actions = {
  "add-task": () => work.add("tasks"),
  "add-hold": () => work.add("holds"),
  paste: () => openPaste(by("plan-paste"), ask, replace),
  undo: () => { if (draft.undo()) touched(true); },
  drop,
  show: (button) => (button.dataset.at === "name" ? by("plan-name")?.focus() : showPlace(draft, work, button.dataset.at)),
  mend,
  "take-in": takeIn,
};

async function start() {
  const { car, template } = page.dataset;
  const query = car ? `?car=${encodeURIComponent(car)}` : template ? `?template=${encodeURIComponent(template)}` : "";
  began = await (await fetch(`/plans/begin${query}`, { headers: { Accept: "application/json" } })).json();
  const key = `plan/${document.documentElement.dataset.journal}/${began.me}/${car ? `car/${car}` : template ? `template/${template}` : "new"}`;
  draft = new Draft(key, began);
  work = new Work(by("plan-work"), draft, began, new Shapes(draft, began, touched), touched, ask);
  work.render();
  if (draft.keptAt) notice(`${words.kept} ${new Date(draft.keptAt).toLocaleString([], { weekday: "short", hour: "2-digit", minute: "2-digit" })} ${words.keptAfter}`);
  const made = sessionStorage.getItem("plan-made");
  if (made) notice(made);
  sessionStorage.removeItem("plan-made");
  document.addEventListener("click", (event) => {
    const button = event.target.closest("[data-plan-do]");
    if (button) actions[button.dataset.planDo]?.(button);
  });
  check();
}

start();
