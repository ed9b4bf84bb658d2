// Reads back what `lines.js` writes, and such lines written by hand. What cannot be read comes back with its number.
const TEXT = '"((?:[^"\\\\]|\\\\.)*)"';
const NUMBER = "\\d+(?:\\.\\d+)?";
const DAY = "Mon|Tue|Wed|Thu|Fri|Sat|Sun";
const HEAD = new RegExp(`^session\\s+(\\S+)(?:\\s+(${DAY}))?(?:\\s+for\\s+weeks?\\s+(\\d+)\\s+(${DAY}|\\d+))?$`);
const NOTE = new RegExp(`^note\\s+${TEXT}$`, "u");
const ENTRY = new RegExp(`^(?:${TEXT}|(\\p{Lu}[^":]*?))\\s*(?:${TEXT})?\\s*:\\s*(.+)$`, "u");
const MASS = `(${NUMBER})\\s*(kg|lb)`;
const LOAD = new RegExp(`^(?:(bodyweight)(?:\\s*([+\\-\u2212])\\s*${MASS})?|${MASS})\\s*[x\u00d7X]\\s*`);
const EFFORT = `(?:RPE\\s*(${NUMBER})|(${NUMBER})\\s*RIR)`;
const AMOUNT = `(${NUMBER}|\\(\\s*\\d+(?:\\s*\\+\\s*\\d+)+\\s*\\))\\s*(s|min|m)?\\s*(/\\s*side)?`;
const SET = new RegExp(`^${AMOUNT}(?:\\s*@\\s*${EFFORT})?$`);

function readSessions(text) {
  const read = { sessions: [], unread: [], kept: [] };
  let current = null;
  text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/).forEach((raw, at) => {
    if (raw.startsWith(NOT_READ)) return read.kept.push(raw.slice(NOT_READ.length));
    const line = withoutComment(raw).trim();
    // What a log's file begins with says nothing of what was done.
    if (!line || /^(?:use|language)\s/.test(line)) return undefined;
    if (/^session\b/.test(line)) {
      current = readHead(line);
      if (current) return read.sessions.push(current);
    } else if (current && readUnder(line, current)) return undefined;
    return read.unread.push({ line: at + 1, text: (current ? `${current.date} ` : "") + raw.trim() });
  });
  return read;
}

function withoutComment(line) {
  return new RegExp(`^(?:[^"#]|${TEXT})*`, "u").exec(line)?.[0] ?? line;
}

function unquoted(text) {
  return text.replace(/\\(.)/gsu, "$1");
}

function readHead(line) {
  const match = HEAD.exec(line);
  if (!match || !isDate(match[1]) || (match[2] && match[2] !== weekdayOf(match[1]))) return null;
  return { date: match[1], week: Number(match[3] ?? 0), slot: match[4] ?? "", note: "", entries: [] };
}

function readUnder(line, session) {
  const note = NOTE.exec(line);
  if (note) {
    session.note += (session.note && "\n") + unquoted(note[1]);
    return true;
  }
  const match = ENTRY.exec(line);
  const sets = match && readSets(match[4]);
  if (sets) session.entries.push({ name: unquoted(match[1] ?? match[2]), label: unquoted(match[3] ?? ""), sets });
  return Boolean(sets);
}

function readSets(text) {
  const load = LOAD.exec(text);
  const shared = loadOf(load);
  const sets = [];
  for (const part of text.slice(load ? load[0].length : 0).split(",")) {
    const set = readSet(part.trim(), shared);
    if (!set) return null;
    sets.push(set);
    // An effort holds for the sets since the one before it.
    if (set.effort) for (const one of sets) if (!one.effort) Object.assign(one, { effort: set.effort, scale: set.scale });
  }
  return sets;
}

function loadOf(match) {
  if (!match) return { load: "", body: 0, unit: data.unit };
  const minus = match[2] && match[2] !== "+" ? "-" : "";
  return { load: minus + (match[3] ?? match[5] ?? ""), body: match[1] ? 1 : 0, unit: match[4] ?? match[6] ?? data.unit };
}

function readSet(text, shared) {
  const match = SET.exec(text);
  if (!match) return null;
  const [, amount, unit, side, rpe, rir] = match;
  const reps = unit === "min" ? String(Number(amount) * 60) : amount.replace(/\s/g, "");
  const kind = unit === "min" ? "s" : unit ?? "";
  const scale = rir === undefined ? "RPE" : "RIR";
  return tidy({ ...shared, reps, kind, side: side ? 1 : 0, effort: rpe ?? rir ?? "", scale });
}
