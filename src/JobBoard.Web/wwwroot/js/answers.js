// An answer outlives its form. When a push takes away what a form was about, what was answered moves to the top of the
// screen and stays there until it was read: whoever wanted a task that another took first is told by whom.
const top = () => document.getElementById("answers");

function keep(form, refusal) {
  const kept = document.createElement("section");
  kept.className = "notice strong answer-kept";
  const about = document.createElement("p");
  about.className = "strong";
  about.textContent = form.querySelector(":scope > button")?.textContent ?? "";
  const read = document.createElement("button");
  read.type = "button";
  read.className = "button";
  read.textContent = "Read";
  read.addEventListener("click", () => kept.remove());
  kept.append(about, refusal, read);
  top()?.append(kept);
}

/** Keeps the answers of forms that a push takes away; a question for a PIN goes with its form. */
export function keepAnswersIn(removed) {
  if (!(removed instanceof Element)) return;
  for (const refusal of removed.querySelectorAll("form.command .answer > .refusal")) {
    if (!refusal.querySelector("input")) keep(refusal.closest("form"), refusal);
  }
}

/** Shows an answer that came after its form was taken away. */
export function keepLate(form) {
  const refusal = form.querySelector(".answer > .refusal");
  if (!form.isConnected && refusal && !refusal.querySelector("input")) keep(form, refusal);
}
