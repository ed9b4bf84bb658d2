// One session on the screen: rows of sets under each movement, a date, a note, and its text.
const FRESH_MS = 6 * 3600 * 1000;

function openSession(session) {
  if (session.view) return;
  const lines = new Map();
  session.view = { lines };
  for (const line of session.lines) {
    const holder = lineHolder(session, line);
    lines.set(line.id, holder);
    arrange(session, line);
  }
  session.view.foot = footOf(session);
  const ways = session.article.querySelector(":scope > nav");
  if (ways) ways.before(session.view.foot);
  else session.article.append(session.view.foot);
  session.article.classList.add("recording");
  session.opener.setAttribute("aria-expanded", "true");
  session.opener.textContent = say("close");
}

function closeSession(session) {
  for (const { node } of session.view.lines.values()) node.remove();
  session.view.foot.remove();
  session.view = null;
  session.article.classList.remove("recording");
  session.opener.setAttribute("aria-expanded", "false");
  session.opener.textContent = openerWords(session);
}

function openerWords(session) {
  const count = doneCount(session);
  return count ? say("go_on", { count }) : say("open");
}

function doneCount(session) {
  const lines = Object.values(book.sessions?.[session.key]?.lines ?? {});
  return lines.reduce((sum, line) => sum + doneSets(line).length, 0);
}

function lineHolder(session, line) {
  const rows = make("div", { class: "rec-sets" });
  const best = make("p", { class: "rec-top" });
  const named = (words) => ({ "aria-label": `${words}: ${calledOf(line)}` });
  const under = make("div", { class: "rec-under" },
    button(say("add"), () => addSet(session, line), named(say("add"))),
    button(say("remove"), () => removeSet(session, line), named(say("remove"))), best);
  const cell = make("td", { colspan: 4 }, make("p", { class: "rec-head" }, headWords(line)), rows, under);
  const node = make("tr", { class: "rec-line" }, cell);
  lastRow(session, line)?.after(node);
  return { node, box: rows, best, rows: [] };
}

// What the numbers in the rows are, said once for all of them.
function headWords(line) {
  const { set } = line.sets[0];
  const load = set.body ? say("head_body") : line.hand ? say("head_hand") : "";
  return [load, say("head_effort", { scale: set.scale })].filter(Boolean).join(" ");
}

// Under the last row that speaks of the movement: its last work row, and the row of its notes.
function lastRow(session, line) {
  let row = [...session.article.querySelectorAll(`tr[data-row^="${line.order}."]`)].at(-1);
  while (row?.nextElementSibling?.classList.contains("about")) row = row.nextElementSibling;
  return row;
}

function arrange(session, line) {
  const holder = session.view.lines.get(line.id);
  const places = placesOf(session, line);
  const before = new Map(holder.rows.map((row) => [row.place, row]));
  holder.rows = places.map((place) => before.get(place) ?? rowOf(session, line, place));
  holder.box.replaceChildren(...holder.rows.map((row) => row.node));
}

function placesOf(session, line) {
  const sets = book.sessions?.[session.key]?.lines?.[line.id] ?? {};
  const asked = line.sets.map((_, place) => place).filter((place) => !sets[place]?.gone);
  const more = live(sets).map(([place]) => Number(place)).filter((place) => place >= line.sets.length);
  return [...asked, ...more.sort((one, other) => one - other)];
}

function addSet(session, line) {
  const place = session.view.lines.get(line.id).rows.at(-1).place + 1;
  const set = { ...currentSet(session, line, place - 1), done: 0 };
  delete set.at;
  record(session, line, place, set);
  arrange(session, line);
  changed(session, line);
  session.view.lines.get(line.id).rows.at(-1).tick.focus();
}

// The last set goes, with what was recorded in it; the others keep their numbers.
function removeSet(session, line) {
  const holder = session.view.lines.get(line.id);
  const row = holder.rows.at(-1);
  if (holder.rows.length < 2) return;
  record(session, line, row.place, { ...entered(session, line, row), done: 0, gone: 1 });
  arrange(session, line);
  changed(session, line);
}

// Everything that shows a line, after it changed here or in another tab.
function changed(session, line) {
  fillBoxes(session, line);
  tellSoon();
  if (!session.view) {
    session.opener.textContent = openerWords(session);
    return;
  }
  const holder = session.view.lines.get(line.id);
  for (const row of holder.rows) refresh(session, line, row);
  holder.best.textContent = topWords(session, line);
}

function topWords(session, line) {
  const sets = doneSets(book.sessions?.[session.key]?.lines?.[line.id]);
  const bests = sets.map(([, set]) => bestOf(set, data.models[line.model]));
  const known = bests.filter((best) => best && best !== "past");
  if (known.length < 2) return "";
  const top = known.reduce((most, best) => (Number(best.best) > Number(most.best) ? best : most));
  return say("top", { best: bestWords(top, line) });
}

// ---- the foot: date, note, ways out --------------------------------------------------------------

function footOf(session) {
  const told = make("p", { class: "rec-told", role: "status" });
  const id = `rec-${session.article.id}`;
  const date = make("input", { type: "date", id: `${id}-date`, onchange: () => keepDate(session, date) });
  const note = make("textarea", {
    id: `${id}-note`, rows: 2, maxlength: LONGEST_NOTE, dir: "auto", oninput: () => keepNote(session, note),
  });
  const lines = () => sessionsText([logOf(session.key, plan)].filter(Boolean), unfinished(session.key));
  session.readFoot = () => {
    const kept = book.sessions?.[session.key];
    if (document.activeElement !== date) date.value = kept?.date?.value ?? (session.date || today());
    if (document.activeElement !== note) note.value = kept?.note?.value ?? "";
  };
  session.readFoot();
  return make("div", { class: "rec-foot" },
    make("p", {}, make("label", { for: date.id }, say("date")), date),
    make("p", {}, make("label", { for: note.id }, say("note")), note),
    make("p", { class: "rec-ways" },
      button(say("copy_one"), () => copy(lines(), told)),
      button(say("save_one"), () => download(lines(), fileName("plan", session.key), "text/plain"))),
    told);
}

function keepDate(session, input) {
  if (!isDate(input.value)) return;
  change(() => { keepHead(session).date = leaf({ value: input.value }); });
  tellSoon();
}

function keepNote(session, input) {
  change(() => { keepHead(session).note = leaf({ value: input.value }); });
  tellSoon();
}

function keepHead(session) {
  const record = recordAt(session.key);
  record.of ??= leaf({ week: session.week, slot: session.slot });
  record.date ??= leaf({ value: session.date || today() });
  return record;
}

// ---- the boxes of the sheet, which print ---------------------------------------------------------

function fillBoxes(session, line) {
  const cells = new Map();
  for (const row of session.article.querySelectorAll(`tr[data-row^="${line.order}."]`)) {
    cells.set(Number(row.dataset.row.split(".")[1]), row.querySelector("td.done"));
  }
  for (const cell of cells.values()) clearBoxes(cell);
  const used = new Map();
  for (const [place, set] of doneSets(book.sessions?.[session.key]?.lines?.[line.id])) {
    const { segment, set: asked } = askedFor(line, place);
    const cell = cells.get(segment);
    if (!cell) continue;
    const at = used.get(segment) ?? 0;
    used.set(segment, at + 1);
    const box = cell.querySelectorAll("i")[at] ?? cell.appendChild(make("i", { class: "rec-more" }));
    box.classList.add("filled");
    box.textContent = boxWords(set, asked.scale);
  }
}

function clearBoxes(cell) {
  for (const box of cell?.querySelectorAll("i") ?? []) {
    if (box.classList.contains("rec-more")) box.remove();
    box.classList.remove("filled");
    box.textContent = "";
  }
}

// The scale is that of the prescription beside it, unless said.
function boxWords(set, scale) {
  const sign = set.body && set.load && !set.load.startsWith("-") ? "+" : "";
  const amount = set.reps + (set.kind && `\u00a0${set.kind}`);
  const load = set.load ? `${sign}${shown(set.load)}\u00d7` : "";
  return load + shown(amount) + (set.effort && `@${shown(set.effort)}${set.scale === scale ? "" : `\u00a0${set.scale}`}`);
}

// ---- rest after a set ----------------------------------------------------------------------------

// A drop set follows at once; lines done in turn rest once each has had as many sets; after the last set of a session
// there is nothing to rest for.
function restAfter(session, line, place) {
  if (!line.low || line.sets[place + 1]?.drop) return;
  const count = (one) => doneSets(book.sessions?.[session.key]?.lines?.[one.id]).length;
  const turns = line.group ? session.lines.filter((one) => one.group === line.group) : [];
  const waits = turns.some((one) => count(one) < Math.min(count(line), one.sets.length));
  const isOver = session.lines.every((one) => count(one) >= one.sets.length);
  if (!waits && !isOver) startRest(line);
}
