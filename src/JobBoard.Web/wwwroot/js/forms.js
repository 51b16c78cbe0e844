// Command forms: sent without leaving the page. What was typed stays until it is done; nothing pretends to have been sent.
import { seen } from "./live.js";
import { keepLate } from "./answers.js";
import { forgetTyped } from "./typed.js";

const PATIENCE = 8000;
const sending = new Map();

/** A random id where the page is not served over HTTPS and crypto.randomUUID is not there. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((b) => b.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

const token = () => document.querySelector('meta[name="antiforgery"]')?.content ?? "";

// The same form pressed again for want of an answer is the same command: it keeps its id and its moment.
function attemptOf(form, body) {
  const words = JSON.stringify([...body].filter(([name]) => !["command", "seen", "pin", "ago", "__RequestVerificationToken"].includes(name)));
  const last = sending.get(form.id || form);
  if (last && last.words === words) return last;
  const attempt = { id: newId(), words, tapped: performance.now(), seen: seen(), busy: false };
  sending.set(form.id || form, attempt);
  return attempt;
}

function bodyOf(form, submitter) {
  const body = new FormData(form);
  if (submitter?.name) body.set(submitter.name, submitter.value);
  const attempt = attemptOf(form, body);
  body.set("command", attempt.id);
  body.set("seen", String(attempt.seen));
  body.set("ago", String(Math.round(performance.now() - attempt.tapped)));
  body.set("__RequestVerificationToken", token());
  return { body, attempt };
}

async function send(form, submitter) {
  const { body, attempt } = bodyOf(form, submitter);
  if (attempt.busy) return;
  attempt.busy = true;
  form.setAttribute("aria-busy", "true");
  try {
    const response = await fetch(form.action, {
      method: "POST", body, headers: { Accept: "application/json" }, signal: AbortSignal.timeout(PATIENCE),
    });
    await answer(form, response);
  } catch {
    notSent(form);
  } finally {
    attempt.busy = false;
    form.removeAttribute("aria-busy");
    count();
  }
}

// An answer that cannot be read is a fault of the program: it may or may not have been done.
async function read(response) {
  try {
    return await response.json();
  } catch {
    return { outcome: "fault", html: "" };
  }
}

async function answer(form, response) {
  const said = await read(response);
  const kept = ["pin", "unavailable", "fault"].includes(said.outcome);
  if (!kept) sending.delete(form.id || form);
  delete form.dataset.unsent;
  if (said.outcome === "done") return done(form, said);
  const where = answerOf(form);
  where.innerHTML = said.html;
  if (said.outcome === "fault") where.append(notice("notice strong", "Something went wrong in the program. Look on the board whether it was done before you send it again."));
  if (said.outcome === "signed-out") where.append(link("/sign-in?back=" + encodeURIComponent(location.pathname + location.search), "Sign in"));
  if (said.outcome === "stale") where.append(link(location.href, "Load the page again"));
  keepLate(form);
  for (const field of form.querySelectorAll("[aria-invalid]")) field.removeAttribute("aria-invalid");
  for (const fault of said.faults ?? []) for (const field of fieldsOf(form, fault.field)) field.setAttribute("aria-invalid", "true");
  (where.querySelector("input") ?? form.querySelector('[aria-invalid="true"]') ?? where).focus?.();
}

// The rules name a member ("area", "unit"), forms its whole path ("place.area.x", "instrument.unit").
function fieldsOf(form, about) {
  if (!about) return [];
  const typed = [...form.elements].filter((field) => field.name && field.type !== "hidden");
  const exact = typed.filter((field) => field.name === about);
  return exact.length > 0 ? exact : typed.filter((field) => field.name.endsWith("." + about) || field.name.includes("." + about + "."));
}

// A form that a push took away before the answer came has nothing left to show: the push was the answer.
function done(form, said) {
  answerOf(form).replaceChildren();
  forgetTyped(form);
  form.reset();
  form.closest("details.ask")?.removeAttribute("open");
  form.closest("dialog")?.close?.();
  form.dispatchEvent(new CustomEvent("command:done", { bubbles: true, detail: said }));
  if ("stay" in form.dataset) return;
  const back = form.elements.back?.value;
  if (back && back !== location.pathname + location.search) location.assign(back);
  else if (form.isConnected && !form.closest("[data-fragment]")) location.reload();
}

function notSent(form) {
  form.dataset.unsent = form.dataset.words ?? "";
  const stop = form.dataset.command === "raise-stop";
  answerOf(form).replaceChildren(stop
    ? notice("notice inverse not-heard", "NOT HEARD: SHOUT")
    : notice("notice strong not-sent", "Not sent: no signal. What you typed is kept here. Send it again when the line is back."));
  if (stop) navigator.vibrate?.([400, 150, 400, 150, 400]);
}

function notice(kind, text) {
  const box = document.createElement("div");
  box.className = kind;
  box.setAttribute("role", "alert");
  const words = document.createElement("p");
  words.textContent = text;
  box.append(words);
  return box;
}

function answerOf(form) {
  let where = form.querySelector(".answer") ?? form.querySelector(".refusal")?.parentElement?.closest(".answer");
  if (!where) {
    where = document.createElement("div");
    where.className = "answer";
    where.setAttribute("role", "status");
    form.querySelector(".refusal")?.remove();
    form.append(where);
  }
  return where;
}

function link(href, words) {
  const a = document.createElement("a");
  a.className = "button";
  a.href = href;
  a.textContent = words;
  return a;
}

// How many forms on this page hold something that was tapped and has not arrived.
function count() {
  const unsent = document.querySelectorAll("form[data-unsent]").length;
  document.documentElement.dataset.unsent = String(unsent);
  for (const where of document.querySelectorAll("[data-unsent-words]")) where.textContent = unsent === 0 ? "" : unsent + " not yet sent, no signal";
}

export function start() {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!form.matches("form[data-command]")) return;
    event.preventDefault();
    send(form, event.submitter);
  });
  window.addEventListener("beforeunload", (event) => { if (document.querySelector("form[data-unsent]")) event.preventDefault(); });
}
