// The live feed: joins the fragments of this page, takes what is newer, morphs it in place and says when the feed is old.
// Nothing is sent over it but the wish to watch. The protocol is told in DEVELOPERS.md.
import { Idiomorph } from "../lib/idiomorph/idiomorph.esm.js";
import { keepAnswersIn } from "./answers.js";
import { keepsTyped } from "./typed.js";

const OLD_AFTER = 5000;
const WAITS = [0, 300, 1000, 2000, 3000];
const root = document.documentElement;
const fragments = new Map();
let connection = null;
let build = root.dataset.build ?? null;
let beatAt = performance.now();
let reached = 0;
// The shop's time at an instant of this device, and how fast it goes on from there. Until the first beat it is the page's.
let clock = { shop: Number(root.dataset.at ?? Date.now()), device: Date.now(), pace: Number(root.dataset.pace ?? 1) };

/** The last entry this screen has reached: what its reader is looking at. */
export const seen = () => Math.max(reached, Number(root.dataset.seq ?? 0));

/** The shop's time now, in milliseconds, whatever this device's clock says. */
export const shopNow = () => clock.shop + (Date.now() - clock.device) * clock.pace;

/** Whether the line is up and heard from within the last five seconds. */
export const isLive = () => root.dataset.feed === "live";

function isNewer(push, known) {
  if (push.journalId !== known.journal) return false;
  return push.seq > known.seq || (push.seq === known.seq && push.at > known.at);
}

function take(push, resync) {
  const known = fragments.get(push.id);
  if (!known || (!isNewer(push, known) && known.turn !== 0)) return;
  const gap = !resync && known.turn !== 0 && push.turn > known.turn + 1;
  Object.assign(known, { seq: push.seq, at: push.at, turn: push.turn });
  if (known.html !== push.html) morph(known, push.html);
  reached = Math.max(reached, push.seq);
  if (gap) join();
}

function morph(known, html) {
  const first = known.html === null;
  known.html = html;
  const before = first ? null : texts(known.element);
  Idiomorph.morph(known.element, html, {
    morphStyle: "innerHTML",
    ignoreActiveValue: true,
    callbacks: {
      beforeNodeMorphed: (node, next) => !(node instanceof Element && (node.matches("[data-clock], [data-page-now], .seal, .answer") || isSameAgo(node, next))),
      beforeAttributeUpdated: (name, element) => !isOurs(name, element),
      beforeNodeRemoved: (node) => keepAnswersIn(node),
    },
  });
  if (before) glow(known.element, before);
  known.element.dispatchEvent(new CustomEvent("live:changed", { bubbles: true }));
}

// "3 min ago" is the browser's own: of the same instant it stays as it stands.
const isSameAgo = (node, next) => node.matches("time[data-ago]") && next instanceof Element && node.dateTime === next.dateTime;

// What this screen's reader opened, typed or turned to is theirs, not the server's.
function isOurs(name, element) {
  if (name === "open") return element.matches("details, dialog");
  if (name === "hidden") return element.matches("[data-page], [data-until]");
  if (name === "aria-pressed") return element.matches("[data-hold-pages]");
  if (["value", "checked", "selected", "aria-invalid", "disabled"].includes(name)) return keepsTyped(element);
  return false;
}

function texts(element) {
  const map = new Map();
  for (const one of element.querySelectorAll("[id]")) map.set(one.id, one.textContent);
  return map;
}

// The smallest named parts whose words are not what they were glow once.
function glow(element, before) {
  for (const one of element.querySelectorAll("[id]")) {
    if (before.get(one.id) === one.textContent || one.matches("[data-clock], form, .seal") || one.closest("form, [hidden]")) continue;
    if ([...one.querySelectorAll("[id]")].some((inner) => !inner.closest("form") && before.get(inner.id) !== inner.textContent)) continue;
    one.classList.remove("glow");
    void one.getBoundingClientRect();
    one.classList.add("glow");
  }
}

function beat(message) {
  if ((build && message.build !== build) || (root.dataset.journal && message.journalId !== root.dataset.journal)) {
    location.reload();
    return;
  }
  build = message.build;
  beatAt = performance.now();
  reached = Math.max(reached, message.seq);
  clock = { shop: message.at, device: Date.now(), pace: message.pace ?? 1 };
  mark("live");
}

function mark(state) {
  if (root.dataset.feed === state) return;
  root.dataset.feed = state;
  document.dispatchEvent(new CustomEvent("live:feed", { detail: state }));
}

function collect() {
  fragments.clear();
  for (const element of document.querySelectorAll("[data-fragment]")) {
    const { fragment, journal, seq, at } = element.dataset;
    fragments.set(fragment, { element, journal, seq: Number(seq), at: Number(at), turn: 0, html: null });
    reached = Math.max(reached, Number(seq));
  }
}

async function join() {
  try {
    const answer = await connection.invoke("Join", [...fragments.keys()]);
    for (const known of fragments.values()) known.turn = 0;
    for (const push of answer.fragments) take(push, true);
    beat(answer.beat);
  } catch {
    mark("old");
  }
}

async function connect(attempt = 0) {
  try {
    await connection.start();
    await join();
  } catch {
    setTimeout(() => connect(attempt + 1), WAITS[Math.min(attempt, WAITS.length - 1)] || 300);
  }
}

/** Starts the feed for the fragments of this page. */
export function start() {
  collect();
  setInterval(() => { if (performance.now() - beatAt > OLD_AFTER) mark("old"); }, 500);
  if (fragments.size === 0 || !window.signalR) return;
  connection = new window.signalR.HubConnectionBuilder()
    .withUrl("/live")
    .withAutomaticReconnect({ nextRetryDelayInMilliseconds: (context) => WAITS[Math.min(context.previousRetryCount, WAITS.length - 1)] })
    .configureLogging(window.signalR.LogLevel.None)
    .build();
  connection.serverTimeoutInMilliseconds = 6000;
  connection.keepAliveIntervalInMilliseconds = 3000;
  connection.on("fragment", (push) => take(push, false));
  connection.on("beat", beat);
  connection.onreconnected(join);
  connection.onclose(() => connect());
  window.addEventListener("online", () => { if (connection.state === "Disconnected") connect(); });
  document.addEventListener("visibilitychange", () => { if (!document.hidden && connection.state === "Connected") join(); });
  connect();
}
