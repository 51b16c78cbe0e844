// What the plan screen calls things. What is wrong with a plan, and what it does, the board says.
export const words = {
  task: "Task", hold: "Hold point", name: "What people call it", stage: "Stage", stageName: "Stage", customerName: "What the customer reads",
  estimate: "Estimate", low: "Low", usual: "Usual", high: "High", unit: "In", minutes: "minutes", hours: "hours",
  place: "Where it is done", atCar: "where the car stands", note: "What it is for", planName: "What this plan is called",
  after: "Comes after", before: "What comes after it", pick: "Choose one", kind: "How", lag: "How long after", clock: "Counted in",
  people: "People and gear", crew: "Who it takes", duty: "Duty", qualification: "Qualified for", nothing: "nothing special", count: "How many",
  gear: "Gear", gearKind: "Kind", rated: "Rated for at least, kg",
  needs: "Needs and leaves", needsItem: "Needs", conditions: "Any of these will do", changes: "Leaves", item: "Item", from: "From", through: "On the way", to: "To",
  touches: "Touches", aspect: "What of it",
  hazards: "Hazards", hazard: "Hazard", endsBy: "Ends by the reading", none: "none",
  readings: "Readings and limits", reading: "Reading", readingUnit: "Unit", min: "Least", max: "Greatest", source: "Where the limit comes from", tool: "Tool to fetch",
  where: "Where on the car", takenWhen: "Taken when", calibrated: "Instrument in calibration", holdsTooClose: "Too close to call holds too", seenByTwo: "Seen by two", standsOn: "Stands on",
  parts: "Parts", part: "Part", partName: "Part", leadDays: "Days from order to arrival",
  steps: "Steps and cautions", stepLines: "How it is done, a line for each step", cautions: "What can hurt, a line for each",
  signOff: "Sign-off", secondCheck: "A second person checks it", secondQualification: "Who checks is qualified for", takesAgain: "Takes again", howLeft: "Ways it can be left, a line for each", nowAndThen: "Only wants a look now and then", runsThrough: "Not left overnight",
  asks: "What the releaser has to have seen", releasedBy: "Released by", keyCheck: "The key check before the first start", handover: "The handover",
  items: "Items", stages: "Stages", system: "System of the key check", itemConditions: "Conditions, a line for each", atTakeIn: "Comes in", asForTheRoad: "As for the road", aspects: "What can be sworn to of it, a line for each", dangers: "Dangers", condition: "While it is",
  reach: "Once this is in", reachAsk: "What can’t be reached once this is in?", reachNone: "Nothing needs what this ends.", reachBefore: "Put it before",
  links: "Links", addAfter: "Add one it comes after", addBefore: "Add one that comes after it",
  adding: { crew: "Add a person", gear: "Add gear", needs: "Add a need", changes: "Add what it leaves", touches: "Add what it touches", hazards: "Add a hazard", readings: "Add a reading", parts: "Add a part", standsOn: "Add what it stands on", takesAgain: "Add one it takes again", dangers: "Add a danger" },
  add: "Add", takeOut: "Take out", takeOutTask: "Take this task out", takeOutHold: "Take this hold point out", addHere: "Add a task here",
  begun: "It was begun or released: it stays as it is. Its links may change.",
  kept: "Your draft from", keptAfter: "is here again. Nothing of it has been done yet.",
  why: "Why does the plan change?", make: "Make the change", save: "Save as template", saveCopy: "Save this plan as a template", start: "Start a car from it", templateName: "What the template is called", saved: "Saved as a template.", made: "The plan is changed.",
  notSent: "Not sent: no signal. What you typed is kept here. Send it again when the line is back.", checking: "Looking it over.", offline: "It cannot be looked over: no signal. Your draft is kept on this device.",
  paste: "Paste a table", pasteHint: "Copy cells in a spreadsheet, with a first line that names the columns: task, stage, after, low, usual, high, unit, people, qualified for, place, parts, steps. Only task is needed. Several after one another, or parts, stand in one cell with semicolons.",
  look: "See what becomes of it", addRows: "Add", rows: "rows", close: "Close", drop: "Throw it away", dropAsk: "Everything typed since the plan was opened goes. Sure?", keep: "Keep it",
  bothChanged: "You both changed these; yours stands:", unnamed: "without a name", full: "This device keeps no more: the draft is only on this page. Make the change, or save it as a template, before you leave.",
  open: "Open it", newTask: "New task", newHold: "New hold point", newStage: "New stage", newItem: "New item", newPart: "New part",
};

export const kinds = [
  ["finish-start", "starts after that one is finished"], ["start-start", "starts after that one is started"],
  ["finish-finish", "is finished after that one is finished"], ["start-finish", "is finished after that one is started"],
];
export const clocks = [["working", "shop hours"], ["elapsed", "clock hours (cure, cool-down, fire watch)"]];
export const positions = [["technician", "a technician or above"], ["foreman", "the foreman or owner"], ["owner", "the owner"]];
export const systems = [
  ["", "none"], ["fuel", "fuel"], ["harness", "harness"], ["coolant", "coolant"], ["oil", "oil"], ["air", "air"],
  ["exhaust", "exhaust"], ["controls", "controls"], ["people-and-place", "people and place"],
];

const members = {
  estimate: "estimate", "estimate.low": "low estimate", "estimate.usual": "usual estimate", "estimate.high": "high estimate", name: "name", stage: "stage", place: "place",
  crew: "people", gear: "gear", needs: "needs", changes: "leaves", touches: "touches", hazards: "hazards", readings: "readings", parts: "parts", standsOn: "stands on",
  takesAgain: "takes again", secondCheck: "second check", conditions: "conditions", atTakeIn: "comes in", asForTheRoad: "as for the road", dangers: "dangers", leadDays: "days to arrival",
};

/** What a member of a plan's entry is called, from its path below the entry. */
export function memberWords(rel) {
  const bare = rel.replace(/\[\d+\]/g, "");
  return members[bare] ?? members[bare.split(".")[0]] ?? "";
}
