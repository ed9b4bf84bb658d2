// Sessions as lines of the plan language. A session here is {date, week, slot, named, note, entries}, an entry
// {name, label, sets}; `named` where the date does not say which session of the plan it was.
const SETS_A_LINE = 20;
const LONGEST_NOTE = 900;
const NOTE_PARTS = new RegExp(`.{1,${LONGEST_NOTE}}`, "gu");
const NOT_READ = "# not read: ";
const NOT_FINISHED = "# not finished: ";

function quoted(text) {
  return `"${text.replace(/["\\]/g, "\\$&")}"`;
}

// Plain capitalised words stand as they are. Others may be names without quotes, too, but are right with them.
function nameWords(name) {
  return /^[A-Z][a-z'-]+(?:[ -][A-Z][a-z'-]+)*$/.test(name) ? name : quoted(name);
}

function loadWords(set) {
  if (!set.body) return set.load && `${set.load} ${set.unit}`;
  if (!set.load) return "bodyweight";
  return set.load.startsWith("-")
    ? `bodyweight - ${set.load.slice(1)} ${set.unit}`
    : `bodyweight + ${set.load} ${set.unit}`;
}

function amountWords(set) {
  const number = set.reps.includes("+") ? `(${set.reps})` : set.reps;
  return number + (set.kind && ` ${set.kind}`) + (set.side ? "/side" : "");
}

function effortWords(set) {
  return set.effort && (set.scale === "RIR" ? `${set.effort} RIR` : `RPE ${set.effort}`);
}

function setWords(sets) {
  const load = loadWords(sets[0]);
  const effort = effortWords(sets[0]);
  return (load && `${load} x `) + sets.map(amountWords).join(", ") + (effort && ` @ ${effort}`);
}

// Sets of one load and effort share a line; where either changes another begins, so that their order can be told.
function entryLines(entry) {
  const runs = [];
  for (const set of entry.sets) {
    const run = runs.at(-1);
    const alike = run && loadWords(run[0]) === loadWords(set) && effortWords(run[0]) === effortWords(set);
    if (alike && run.length < SETS_A_LINE) run.push(set);
    else runs.push([set]);
  }
  const head = nameWords(entry.name) + (entry.label && ` ${quoted(entry.label)}`);
  return runs.map((run) => `  ${head}: ${setWords(run)}`);
}

function sessionLines(one) {
  const what = one.named ? ` for week ${one.week} ${one.slot}` : "";
  const note = one.note ? one.note.split("\n").flatMap((line) => line.match(NOTE_PARTS) ?? [""]) : [];
  return [
    `session ${one.date} ${weekdayOf(one.date)}${what}`,
    ...one.entries.flatMap(entryLines),
    ...note.map((line) => `  note ${quoted(line)}`),
  ];
}

// `asides` are lines that could not be read or are undecided: kept as comments, which the compiler passes over.
function sessionsText(sessions, asides = []) {
  const parts = sessions.map((one) => sessionLines(one).join("\n"));
  if (asides.length) parts.push(asides.join("\n"));
  return parts.length ? `${parts.join("\n\n")}\n` : "";
}
