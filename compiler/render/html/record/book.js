// What was recorded, kept in the browser's storage under one key for a plan and an athlete.
//
// The book is maps in maps; its leaves carry `at`, when they were written, and the newer leaf wins. So two tabs of one
// sheet may write at the same moment and the later one takes up what the other wrote. A leaf that was taken away stays
// as `gone`. sessions: {key: {date, of, note, lines: {id: {place: set}}}}; kept: lines that could not be read;
// clashes: sets read in that differ from what is here; rest: the count-down; awake: whether the screen is kept on.
let book = {};
let inTrouble = "";
let whenTrouble = () => {};

function bookKey() {
  return `setwright ${JSON.stringify([data.plan, data.athlete])}`;
}

// Every change is written at once, on top of what another tab may have written since.
function change(edit) {
  book = merged(book, stored());
  edit(book);
  write();
}

function leaf(values) {
  leaf.last = Math.max(Date.now(), (leaf.last ?? 0) + 1);
  return { ...values, at: leaf.last };
}

function live(map) {
  return Object.entries(map ?? {}).filter(([, value]) => !value.gone);
}

function recordAt(key) {
  book.sessions ??= {};
  const record = (book.sessions[key] ??= {});
  record.lines ??= {};
  return record;
}

function loadBook() {
  book = stored();
}

// Another tab wrote. What it did not know of is written again, so that nothing is lost whoever comes last.
function takeUp(text) {
  const theirs = parsed(text ?? "{}") ?? {};
  book = merged(book, theirs);
  if (!covers(theirs, book)) write();
}

function covers(theirs, mine) {
  return Object.entries(mine).every(([key, value]) => {
    const found = theirs[key];
    if (found === undefined) return !isLeaf(value) && covers({}, value);
    return isLeaf(value) || isLeaf(found) ? (found.at ?? 0) >= (value.at ?? 0) : covers(found, value);
  });
}

function merged(one, other) {
  const made = { ...one };
  for (const [key, value] of Object.entries(other)) {
    const mine = made[key];
    if (mine === undefined) made[key] = value;
    else if (isLeaf(mine) || isLeaf(value)) made[key] = (value.at ?? 0) > (mine.at ?? 0) ? value : mine;
    else made[key] = merged(mine, value);
  }
  return made;
}

function isLeaf(value) {
  return typeof value !== "object" || value === null || typeof value.at === "number";
}

function stored() {
  try {
    const text = localStorage.getItem(bookKey());
    const found = text === null ? {} : parsed(text);
    if (found) return found;
    // Not ours to throw away: it is put aside before anything is written over it.
    localStorage.setItem(`${bookKey()} unread`, text);
    localStorage.removeItem(bookKey());
    trouble("damaged");
  } catch {
    trouble("blocked");
  }
  return {};
}

function parsed(text) {
  try {
    const found = JSON.parse(text);
    return typeof found === "object" && !Array.isArray(found) ? found ?? {} : null;
  } catch {
    return null;
  }
}

// Storage may be switched off (an error, or no storage at all) or full. Then the book lives in memory alone.
function write() {
  try {
    localStorage.setItem(bookKey(), JSON.stringify(book));
    if (inTrouble !== "damaged") trouble("");
  } catch (error) {
    trouble(error?.name === "QuotaExceededError" ? "full" : "blocked");
  }
}

function trouble(kind) {
  if (kind === inTrouble) return;
  inTrouble = kind;
  whenTrouble();
}

// ---- what the book says, as sessions that can be written out -------------------------------------

function doneSets(line) {
  return live(line).map(([place, set]) => [Number(place), set.done ? tidy(set) : null])
    .filter(([, set]) => set).sort(([one], [other]) => one - other);
}

function logOf(key, plan) {
  const record = book.sessions?.[key];
  if (!record) return null;
  const known = plan.get(key);
  const order = (known?.lines ?? []).map((line) => line.id);
  const others = Object.keys(record.lines ?? {}).filter((id) => !order.includes(id));
  const entries = [...order, ...others].map((id) => entryOf(id, record.lines?.[id])).filter((one) => one.sets.length);
  const note = clean(record.note?.value ?? "");
  if (!entries.length && !note) return null;
  const { week, slot } = known ?? record.of ?? { week: 0, slot: "" };
  const date = record.date?.value || known?.date || (isDate(key) ? key : today());
  return { key, date, week, slot, named: Boolean(slot) && known?.date !== date, note, entries };
}

function entryOf(id, line) {
  const [name, label] = JSON.parse(id);
  return { id, name, label, sets: doneSets(line).map(([, set]) => set) };
}

function allLogs(plan) {
  const logs = Object.keys(book.sessions ?? {}).map((key) => logOf(key, plan)).filter(Boolean);
  return logs.sort((one, other) => (one.date + one.key < other.date + other.key ? -1 : 1));
}

// What no line of this sheet shows: sessions and movements that the plan no longer has, or never had.
function strayLogs(plan) {
  return allLogs(plan).map((log) => {
    const ids = (plan.get(log.key)?.lines ?? []).map((line) => line.id);
    const isStray = (entry) => !ids.includes(entry.id);
    return plan.has(log.key) ? { ...log, note: "", entries: log.entries.filter(isStray) } : log;
  }).filter((log) => log.entries.length || log.note);
}

// Comments at the end of the exported text: what could not be read, what cannot be, and what is undecided.
function asides() {
  const unread = live(book.kept).map(([, one]) => NOT_READ + one.text);
  return [...unread, ...Object.keys(book.sessions ?? {}).sort().flatMap(unfinished), ...live(book.clashes).map(([, clash]) => `# undecided: ${clashWords(clash)}`)];
}

// The sets of a session that are left out, since what was typed for them cannot be.
function unfinished(key) {
  const { date, lines } = book.sessions?.[key] ?? {};
  return Object.entries(lines ?? {}).flatMap(([id, line]) => live(line).filter(([, set]) => wrongIn(set).length)
    .map(([place, set]) => {
      const [name, label] = JSON.parse(id);
      const called = `${name}${label && ` ${quoted(label)}`}, set ${Number(place) + 1}`;
      return `${NOT_FINISHED}${date?.value ?? key} ${called}: ${setWords([set])}`;
    }));
}

function clashWords(clash) {
  const [name, label] = JSON.parse(clash.id);
  return `${clash.date} ${name}${label && ` ${quoted(label)}`}: ${setWords([clash.set])}`;
}
