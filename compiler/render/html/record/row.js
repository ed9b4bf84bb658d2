// One set on the screen: a button for done, fields for load, repetitions and effort.
function rowOf(session, line, place) {
  const row = { place, node: null, fields: {} };
  const number = place + 1;
  row.tick = button(String(number), () => tick(session, line, row), {
    class: "rec-tick", "aria-label": say("done", { number }), "aria-pressed": "false",
  });
  row.best = make("span", { class: "rec-best" });
  row.node = make("div", { class: "rec-set", role: "group", "aria-label": `${calledOf(line)}, ${say("set", { number })}` },
    row.tick, ...fieldsOf(session, line, row), row.best);
  refresh(session, line, row);
  return row;
}

function calledOf(line) {
  return [line.name, line.label].filter(Boolean).join(" ");
}

function fieldsOf(session, line, row) {
  const set = currentSet(session, line, row.place);
  const asked = askedFor(line, row.place);
  const amount = { "": "\u00d7", s: "s", m: "m" }[set.kind];
  const scale = set.scale === asked.set.scale ? "@" : set.scale;
  return [
    ...(asked.bare && !set.load ? [] : loadFields(session, line, row, set)),
    field(session, line, row, "reps", amountName(set), set.reps.includes("+") ? "text" : "numeric", amount),
    field(session, line, row, "effort", set.scale, "decimal", scale),
  ];
}

function amountName(set) {
  const what = { "": say("reps"), s: say("seconds"), m: say("metres") }[set.kind];
  return set.side ? `${what} ${say("side")}` : what;
}

// The keys for decimals have no minus on some phones, so a button turns added mass into help and back.
function loadFields(session, line, row, set) {
  const name = set.body ? say("on_body", { unit: set.unit }) : say(line.hand ? "load_hand" : "load", { unit: set.unit });
  const load = field(session, line, row, "load", name, "decimal", set.unit);
  if (!set.body) return [load];
  const input = row.fields.load;
  const turn = () => {
    input.value = input.value.startsWith("-") ? input.value.slice(1) : `-${input.value}`;
    typed(session, line, row);
  };
  const spoken = `${say("set", { number: row.place + 1 })}, ${say("sign")}`;
  return [button("\u00b1", turn, { class: "rec-sign", "aria-label": spoken }), load];
}

function field(session, line, row, name, spoken, mode, mark) {
  const input = make("input", {
    type: "text", inputmode: mode, autocomplete: "off", enterkeyhint: "done", maxlength: 12,
    "aria-label": `${say("set", { number: row.place + 1 })}, ${spoken}`,
    oninput: () => typed(session, line, row),
    onchange: () => settled(session, line, row),
    onfocus: () => input.select(),
    onkeydown: (event) => { if (event.key === "Enter" && !isDone(session, line, row)) tick(session, line, row); },
  });
  row.fields[name] = input;
  const words = make("span", { "aria-hidden": "true" }, mark);
  return make("span", { class: `rec-field rec-${name}` }, ...(name === "load" ? [input, words] : [words, input]));
}

function askedFor(line, place) {
  return line.sets[place] ?? line.sets.at(-1);
}

// What is recorded; before that, what was asked for, at the load of the set before where none was written.
function currentSet(session, line, place) {
  const found = recorded(session, line, place);
  if (found) return found;
  const asked = askedFor(line, place).set;
  const before = place ? recorded(session, line, place - 1) : null;
  return asked.load || asked.body || !before ? { ...asked } : { ...asked, load: before.load, unit: before.unit };
}

function recorded(session, line, place) {
  const found = book.sessions?.[session.key]?.lines?.[line.id]?.[place];
  return found && !found.gone ? found : null;
}

function isDone(session, line, row) {
  const set = recorded(session, line, row.place);
  return Boolean(set?.done && tidy(set));
}

function entered(session, line, row) {
  const set = { ...currentSet(session, line, row.place) };
  delete set.at;
  for (const [name, input] of Object.entries(row.fields)) set[name] = input.value;
  const kept = recorded(session, line, row.place);
  // What was not touched stays as it was recorded, whatever sign the decimals are shown with.
  for (const name of Object.keys(row.fields)) if (kept && shown(kept[name]) === set[name]) set[name] = kept[name];
  return tidy(set) ?? set;
}

function record(session, line, place, set) {
  change(() => {
    const found = recordAt(session.key);
    found.date ??= leaf({ value: session.date || today() });
    found.of ??= leaf({ week: session.week, slot: session.slot });
    const sets = (found.lines[line.id] ??= {});
    sets[place] = leaf(set);
  });
}

function typed(session, line, row) {
  record(session, line, row.place, entered(session, line, row));
  changed(session, line);
}

// A number that cannot be is no longer done once its field is left.
function settled(session, line, row) {
  const set = entered(session, line, row);
  if (set.done && !tidy(set)) record(session, line, row.place, { ...set, done: 0 });
  changed(session, line);
}

function tick(session, line, row) {
  const set = entered(session, line, row);
  const done = !isDone(session, line, row);
  if (done && !tidy(set)) {
    for (const name of Object.keys(row.fields)) mark(row, name, set);
    tellWhy(session, line, row, set);
    Object.values(row.fields).find((input) => input.hasAttribute("aria-invalid"))?.focus();
    return;
  }
  record(session, line, row.place, { ...set, done: done ? 1 : 0 });
  if (done) restAfter(session, line, row.place);
  changed(session, line);
}

function mark(row, name, set) {
  if (isWrong(set, name)) row.fields[name].setAttribute("aria-invalid", "true");
  else row.fields[name].removeAttribute("aria-invalid");
}

// Under the row, for as long as a field of it is marked: what the field takes, and that the set is left out till then.
function tellWhy(session, line, row, set) {
  const wrong = Object.keys(row.fields).filter((name) => row.fields[name].hasAttribute("aria-invalid"));
  const words = wrong.length ? [...wrong.map((name) => whyWrong(set, name)), say("wrong")].join(" ") : "";
  const id = `why-${session.article.id}-${line.order}-${row.place}`;
  for (const [name, input] of Object.entries(row.fields)) {
    if (wrong.includes(name)) input.setAttribute("aria-describedby", id);
    else input.removeAttribute("aria-describedby");
  }
  row.slip ??= make("p", { class: "rec-why", role: "alert", id });
  if (!words) row.slip.remove();
  else if (!row.slip.isConnected) row.node.append(row.slip);
  if (row.slip.textContent !== words) row.slip.textContent = words;
}

function refresh(session, line, row) {
  const set = currentSet(session, line, row.place);
  const done = isDone(session, line, row);
  for (const [name, input] of Object.entries(row.fields)) {
    if (document.activeElement !== input) input.value = shown(set[name]);
    if (set[name].trim() || !input.hasAttribute("aria-invalid")) mark(row, name, { ...set, reps: set.reps || "1" });
  }
  tellWhy(session, line, row, set);
  row.tick.setAttribute("aria-pressed", String(done));
  row.node.classList.toggle("rec-done", done);
  // What is only asked for speaks for no best yet.
  const best = recorded(session, line, row.place) ? bestOf(set, data.models[line.model]) : null;
  row.best.textContent = bestWords(best, line);
}

function bestWords(best, line) {
  if (!best) return "";
  if (best === "past") return say("past");
  const amount = `${shown(best.best)}\u00a0${best.unit}${line.hand ? ` ${say("each_hand")}` : ""}`;
  return say(best.least ? "best_least" : "best", { best: amount, model: line.model });
}
