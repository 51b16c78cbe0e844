// Clocks and "3 min ago", written from the shop's time so that a device's own clock does not matter.
import { shopNow } from "./live.js";

const zone = document.documentElement.dataset.zone || "UTC";
const day = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short", timeZone: zone });
const clock = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit", hourCycle: "h23", timeZone: zone });

function ago(ms) {
  const minutes = Math.floor(ms / 60000);
  if (minutes < 1) return "just now";
  if (minutes < 60) return minutes + " min ago";
  return minutes < 1440 ? Math.floor(minutes / 60) + " h ago" : Math.floor(minutes / 1440) + " d ago";
}

function write() {
  const now = shopNow();
  const parts = Object.fromEntries(day.formatToParts(now).map((p) => [p.type, p.value]));
  for (const time of document.querySelectorAll("[data-clock]")) {
    const words = time.dataset.clock === "time" ? clock.format(now) : `${parts.weekday} ${parts.day} ${parts.month} ${clock.format(now)}`;
    if (time.textContent !== words) time.textContent = words;
  }
  for (const time of document.querySelectorAll("time[data-ago]")) {
    const words = ago(now - Date.parse(time.dateTime));
    if (time.textContent !== words) time.textContent = words;
  }
}

// What may be taken back for a minute goes when the minute is over.
function expire() {
  for (const part of document.querySelectorAll("[data-until]")) part.hidden = Date.parse(part.dataset.until) < shopNow();
}

export function start() {
  write();
  setInterval(() => { write(); expire(); }, 1000);
  document.addEventListener("live:changed", write);
}
