// Takes what was read into the book. A set that is here already is left alone; one that differs waits for a decision;
// so reading the same text twice adds nothing.
function bringIn(read, plan) {
  const tally = { added: 0, known: 0, differs: 0, unread: read.unread.length };
  change((into) => {
    for (const session of read.sessions) bringSession(session, plan, tally);
    into.kept ??= {};
    for (const text of [...read.kept, ...read.unread.map((one) => one.text)]) into.kept[`line ${text}`] ??= leaf({ text });
  });
  return tally;
}

function bringSession(session, plan, tally) {
  const key = keyFor(session, plan);
  const record = recordAt(key);
  record.date ??= leaf({ value: session.date });
  if (session.slot) record.of ??= leaf({ week: session.week, slot: session.slot });
  const times = {};
  let last = "";
  for (const entry of session.entries) {
    const id = lineFor(entry, plan.get(key), times, last);
    last = id;
    bringSets(key, session.date, id, entry.sets, times, tally);
  }
  const note = clean(session.note);
  const mine = record.note?.value ?? "";
  if (note && !clean(mine).includes(note)) record.note = leaf({ value: mine + (mine && "\n") + note });
}

// Where the session belongs: with what was recorded for it before, else where it says, else on its date.
function keyFor({ date, week, slot }, plan) {
  const isThis = (one) => !slot || (one && one.week === week && one.slot === slot);
  const before = Object.entries(book.sessions ?? {}).find(([key, record]) =>
    (record.date?.value ?? key) === date && (slot ? isThis(plan.get(key) ?? record.of) : key === date));
  if (before) return before[0];
  const known = slot ? [...plan.values()].find(isThis)?.key : date;
  const key = known ?? (plan.has(date) ? `w${week}-${slot}` : date);
  const other = book.sessions?.[key]?.date?.value;
  return other && other !== date ? `${key} ${date}` : key;
}

// A movement that stands twice in a session goes on in its second place after another movement came between.
function lineFor(entry, session, times, last) {
  const known = session?.lines.find((line) => sameName(line.name, entry.name) && sameName(line.label, entry.label));
  const [name, label] = known ? [known.name, known.label] : [clean(entry.name), clean(entry.label)];
  const next = idOf(name, label, (times[name + label] ?? 0) + 1);
  const isNew = !times[name + label] || (session?.lines.some((line) => line.id === next)
    && last !== idOf(name, label, times[name + label]));
  if (isNew) times[name + label] = (times[name + label] ?? 0) + 1;
  return idOf(name, label, times[name + label]);
}

function bringSets(key, date, id, sets, times, tally) {
  const line = (recordAt(key).lines[id] ??= {});
  const done = doneSets(line);
  times[`sets ${id}`] ??= 0;
  for (const set of sets) {
    const at = times[`sets ${id}`];
    times[`sets ${id}`] += 1;
    if (at >= done.length) {
      const place = freePlace(line, done.at(-1)?.[0] ?? -1);
      line[place] = leaf({ ...set, done: 1 });
      done.push([place, set]);
      tally.added += 1;
    } else if (sameSet(done[at][1], set)) tally.known += 1;
    else tally.differs += clash(key, date, id, done[at][0], set);
  }
}

function freePlace(line, after) {
  let place = after + 1;
  while (line[place] && !line[place].gone) place += 1;
  return place;
}

function clash(key, date, id, place, set) {
  book.clashes ??= {};
  const name = `${key} ${id} ${place} ${setWords([set])}`;
  if (book.clashes[name]) return 0;
  book.clashes[name] = leaf({ key, date, id, place, set });
  return 1;
}

function settle(name, take) {
  change((into) => {
    const { key, id, place, set } = into.clashes[name];
    if (take) recordAt(key).lines[id][place] = leaf({ ...set, done: 1 });
    into.clashes[name] = leaf({ ...into.clashes[name], gone: 1 });
  });
}
