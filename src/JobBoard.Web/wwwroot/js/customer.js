// A customer's page: takes what is pushed, and says at once when its link no longer works. It sends nothing but the wish to watch.
const OLD_AFTER = 8000;
const WAITS = [300, 1000, 2000, 3000, 5000];
const root = document.documentElement;
const frame = document.querySelector("[data-fragment]");
const token = location.pathname.split("/").pop();
const clock = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit", hourCycle: "h23", timeZone: root.dataset.zone || "UTC" });
const known = { seq: Number(frame.dataset.seq), at: Number(frame.dataset.at), html: null };
let connection = null;
let build = null;
let beatAt = performance.now();
let isGone = false;

function gone() {
  if (isGone) return;
  isGone = true;
  document.getElementById("main").replaceChildren(document.getElementById("gone").content.cloneNode(true));
  root.dataset.feed = "gone";
  connection?.stop();
}

function take(push) {
  if (push.id !== frame.dataset.fragment || push.seq < known.seq || (push.seq === known.seq && push.at < known.at)) return;
  Object.assign(known, { seq: push.seq, at: push.at });
  if (push.html === known.html) return;
  const focused = document.activeElement?.closest("a")?.getAttribute("href");
  known.html = push.html;
  frame.innerHTML = push.html;
  if (frame.querySelector("[data-gone]")) gone();
  else if (focused) [...frame.querySelectorAll("a")].find((a) => a.getAttribute("href") === focused)?.focus({ preventScroll: true });
}

function mark(state) {
  if (isGone || root.dataset.feed === state) return;
  root.dataset.feed = state;
  document.querySelector("[data-as-of-old]").hidden = state === "live";
}

function beat(message) {
  if ((build && message.build !== build) || message.journalId !== root.dataset.journal) {
    location.reload();
    return;
  }
  build = message.build;
  beatAt = performance.now();
  const words = `As of ${clock.format(message.at)}, updates itself.`;
  const asOf = document.querySelector("[data-as-of]");
  if (asOf && asOf.textContent !== words) asOf.textContent = words;
  mark("live");
}

async function join() {
  const answer = await connection.invoke("Join", [frame.dataset.fragment]);
  if (answer.fragments.length === 0) gone();
  for (const push of answer.fragments) take(push);
  beat(answer.beat);
}

async function connect(attempt = 0) {
  if (isGone) return;
  try {
    await connection.start();
    await join();
  } catch (error) {
    if (error?.statusCode === 401 || /\b401\b/.test(String(error))) gone();
    else {
      mark("old");
      setTimeout(() => connect(attempt + 1), WAITS[Math.min(attempt, WAITS.length - 1)]);
    }
  }
}

function start() {
  setInterval(() => { if (performance.now() - beatAt > OLD_AFTER) mark("old"); }, 1000);
  connection = new window.signalR.HubConnectionBuilder()
    .withUrl("/live", { accessTokenFactory: () => token })
    .configureLogging(window.signalR.LogLevel.None)
    .build();
  connection.serverTimeoutInMilliseconds = 12000;
  connection.on("fragment", take);
  connection.on("beat", beat);
  connection.onclose(() => connect());
  document.addEventListener("visibilitychange", () => { if (!document.hidden && connection.state === "Connected") join().catch(() => mark("old")); });
  connect();
}

start();
