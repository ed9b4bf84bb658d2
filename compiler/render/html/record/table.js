// Sessions as a table (RFC 4180), one row a set, and back.
const COLUMNS = ["date", "slot", "exercise", "exercise_label", "set", "load", "unit", "reps", "effort", "note"];
// What a spreadsheet could take for a formula gets a quotation mark before it, which is taken off again.
const FORMULA = /^'*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;

function tableText(sessions, asides = []) {
  const rows = sessions.flatMap(sessionRows);
  for (const aside of asides) rows.push(["", "", "", "", "", "", "", "", "", aside]);
  return [COLUMNS, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

function cell(text) {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function guarded(text) {
  return FORMULA.test(text) ? `'${text}` : text;
}

function unguarded(text) {
  return text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text;
}

// The note stands on the first row of its session.
function sessionRows(one) {
  const slot = one.slot && `w${one.week}-${one.slot}`;
  const rows = one.entries.flatMap((entry) => entry.sets.map((set, at) => setRow(entry, set, at)));
  if (!rows.length) rows.push(["", "", "", "", "", "", ""]);
  return rows.map((row, at) => [one.date, slot, ...row, at ? "" : guarded(one.note)]);
}

function setRow(entry, set, at) {
  const load = set.body ? loadWords({ ...set, unit: "" }).trim() : set.load;
  const [name, label] = [guarded(entry.name), guarded(entry.label)];
  return [name, label, String(at + 1), load, set.load && set.unit, amountWords(set), effortWords(set)];
}

function looksLikeTable(text) {
  const head = /^[^\r\n]*/.exec(text.trimStart())[0];
  return /[,;\t]/.test(head) && /(?:^|[\ufeff,;\t])\s*"?date"?\s*(?:[,;\t]|$)/i.test(head);
}

function readTable(text) {
  const read = { sessions: [], unread: [], kept: [] };
  const rows = tableRows(text.replace(/^\ufeff/, "").trimStart());
  const columns = rows[0].cells.map((name) => name.trim().toLowerCase());
  for (const { line, cells, raw } of rows.slice(1)) {
    const row = Object.fromEntries(columns.map((name, at) => [name, cells[at] ?? ""]));
    if (row.note?.startsWith(NOT_READ)) read.kept.push(row.note.slice(NOT_READ.length));
    else if (!cells.join("").trim() || row.note?.startsWith("# ")) continue;
    else if (!readRow(row, read.sessions)) read.unread.push({ line, text: raw.trim() });
  }
  return read;
}

// Cells between commas, semicolons or tabs, whichever the head has; a cell in quotes may go over lines.
function tableRows(text) {
  const between = /[,;\t]/.exec(text)[0];
  const part = new RegExp(`(?:"((?:[^"]|"")*)"|([^"\r\n${between}][^\r\n${between}]*)?)(${between}|\r\n|\n|\r|$)`, "y");
  const rows = [];
  let line = 1;
  while (part.lastIndex < text.length) {
    const row = { line, cells: [], raw: "" };
    const from = part.lastIndex;
    for (let match = part.exec(text); match; match = part.exec(text)) {
      row.cells.push(match[1] === undefined ? match[2] ?? "" : match[1].replaceAll('""', '"'));
      if (match[3] !== between) break;
    }
    // A quotation mark in the middle of a cell: the rest of the line is kept as it is.
    if (part.lastIndex <= from) {
      const end = /\r\n|\r|\n|$/.exec(text.slice(from));
      part.lastIndex = from + end.index + end[0].length || text.length;
      row.cells = [text.slice(from, from + end.index)];
    }
    row.raw = text.slice(from, part.lastIndex);
    line += row.raw.split(/\r\n|\r|\n/).length - 1;
    rows.push(row);
  }
  return rows;
}

function readRow(row, sessions) {
  const slot = /^w(\d+)-(\w+)$/.exec(row.slot ?? "") ?? [];
  if (!isDate(row.date ?? "")) return false;
  const sets = row.exercise ? readSets(rowWords(row)) : [];
  if (!sets || sets.length > 1) return false;
  let session = sessions.at(-1);
  const head = { date: row.date, week: Number(slot[1] ?? 0), slot: slot[2] ?? "", note: "", entries: [] };
  if (!session || session.date !== head.date || session.week !== head.week || session.slot !== head.slot) {
    session = head;
    sessions.push(session);
  }
  const note = unguarded(row.note ?? "");
  if (note) session.note += (session.note && "\n") + note;
  if (sets.length) addTo(session, unguarded(row.exercise), unguarded(row.exercise_label ?? ""), sets[0]);
  return true;
}

// The row as the language writes it, so that one reader knows what a set is.
function rowWords(row) {
  const decimal = (text) => (text ?? "").trim().replace(/^'/, "").replace(/(\d),(\d)/g, "$1.$2");
  const load = decimal(row.load);
  const unit = load && load !== "bodyweight" ? ` ${row.unit || data.unit}` : "";
  const effort = decimal(row.effort);
  const scaled = /^[\d.]+$/.test(effort) ? `RPE ${effort}` : effort;
  return (load && `${load}${unit} x `) + decimal(row.reps) + (scaled && ` @ ${scaled}`);
}

function addTo(session, name, label, set) {
  const last = session.entries.at(-1);
  if (last && last.name === name && last.label === label) last.sets.push(set);
  else session.entries.push({ name, label, sets: [set] });
}
