// One set: `load` (added to bodyweight where `body`), `unit`, `reps`, their `kind` (nothing, s, m), `side` for each
// side, `effort` on its `scale`. While one types, values are as typed; `tidy` makes them exact or says that they are not.
const MOST_LOAD = { kg: 1000, lb: 2205 };
const MOST_AMOUNT = { "": 1000, s: 21600, m: 50000 };
const FIELDS = ["load", "body", "reps", "kind", "side", "effort"];

function tidy(set) {
  const load = set.load.trim() === "" ? "" : numberOf(set.load, MOST_LOAD[set.unit]);
  const reps = amountOf(set.reps, set.kind);
  const effort = set.effort.trim() === "" ? "" : effortOf(set.effort, set.scale);
  const impossible = load === null || reps === null || effort === null || (!set.body && load.startsWith("-"));
  return impossible ? null : { ...set, load: load === "0" ? "" : load, reps, effort };
}

// The fields whose own text is what makes the set impossible; an empty one is only not filled in yet.
function wrongIn(set) {
  return ["load", "reps", "effort"].filter((name) => set[name].trim() && isWrong(set, name));
}

function isWrong(set, name) {
  return tidy({ ...set, load: "", reps: "1", effort: "", [name]: set[name] }) === null;
}

// What the field takes.
function whyWrong(set, name) {
  const [low, high] = set.scale === "RIR" ? [0, 9] : [1, 10];
  if (name === "effort") return say("wrong_effort", { scale: set.scale, low, high });
  const most = name === "load" ? MOST_LOAD[set.unit] : MOST_AMOUNT[set.kind];
  const amount = { "": "wrong_reps", s: "wrong_seconds", m: "wrong_metres" }[set.kind];
  const what = name === "reps" ? amount : set.body ? "wrong_body" : "wrong_load";
  return say(what, { most, unit: set.unit });
}

// `5`, `40`, or a cluster's `1+1+1`.
function amountOf(typed, kind) {
  const parts = typed.trim().replace(/^\((.*)\)$/, "$1").split("+");
  if (parts.length > 1 && kind) return null;
  const numbers = parts.map((part) => numberOf(part, MOST_AMOUNT[kind]));
  if (numbers.some((number) => number === null || number.startsWith("-"))) return null;
  if (!kind && numbers.some((number) => number.includes("."))) return null;
  if (numbers.length > 1 && numbers.reduce((sum, number) => sum + Number(number), 0) > MOST_AMOUNT[""]) return null;
  return numbers.join("+");
}

function effortOf(typed, scale) {
  const number = numberOf(typed, scale === "RIR" ? 9 : 10);
  const least = scale === "RIR" ? 0 : 1;
  return number === null || Number(number) < least ? null : number;
}

function sameSet(one, other) {
  if (FIELDS.some((field) => String(one[field] || "") !== String(other[field] || ""))) return false;
  return (!one.load || one.unit === other.unit) && (!one.effort || one.scale === other.scale);
}

// The best that a set speaks for, with the factors that were worked out for the sheet; `least` where no effort says
// how much was left. Null for what has no load or no repetitions, "past" beyond the last factor.
function bestOf(set, factors) {
  const exact = tidy(set);
  if (!exact?.load || exact.body || exact.kind || exact.reps.includes("+") || exact.reps === "0") return null;
  const left = !exact.effort ? 0 : exact.scale === "RIR" ? Number(exact.effort) : 10 - Number(exact.effort);
  const place = Math.round((Number(exact.reps) + left) * 2) - 2;
  if (place >= factors.length) return "past";
  const best = Number(exact.load) * factors[Math.max(place, 0)];
  return { best: String(Math.round(best * 10) / 10), unit: exact.unit, least: !exact.effort };
}

// The plan as the script works with it: a map from a session's key to the session.
function planned() {
  return new Map(data.sessions.map(([key, date, slot, week, lines]) => {
    const seen = {};
    return [key, { key, date, slot, week, lines: lines.map((line, at) => plannedLine(line, at, seen)) }];
  }));
}

function plannedLine([movement, label, rest, parts, group], at, seen) {
  const [name, model, hand] = data.movements[movement];
  const times = JSON.stringify([name, label]);
  seen[times] = (seen[times] ?? 0) + 1;
  const [low, high, every] = data.rests[rest] ?? [0, 0, 0];
  const sets = parts.flatMap((place, segment) => plannedSets(data.sets[place], segment));
  return { id: idOf(name, label, seen[times]), name, label, model, hand, low, high, every, group, order: at + 1, sets };
}

// What a set that went as written is recorded as; ranges stand at their top, as the loads do.
function plannedSets([count, load, body, unit, low, high, kind, side, effort, scale, drop], segment) {
  const set = { load, body, unit: MOST_LOAD[unit] ? unit : data.unit, reps: high, kind, side, effort, scale };
  if (kind === "+" || kind === "max") set.kind = "";
  return Array.from({ length: count }, () => ({ set, segment, drop, low, bare: unit === "-" }));
}

// A line is found again by what it is called, so that it may stand elsewhere in a rebuilt sheet.
function idOf(name, label, occurrence) {
  return JSON.stringify([name, label, occurrence]);
}
