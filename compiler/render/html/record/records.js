// What is recorded, as a whole: ways out, ways in, decisions, and what no line of the sheet shows.
let panel = null;

function recordsPanel() {
  const told = make("p", { class: "rec-told", role: "status" });
  panel = { told, count: make("p"), clashes: make("div"), stray: make("div"), unread: make("div") };
  const text = () => sessionsText(allLogs(plan), asides());
  const table = () => tableText(allLogs(plan), asides());
  return make("section", { class: "records", id: "records", "aria-labelledby": "records-head" },
    make("h2", { id: "records-head" }, say("records")),
    make("p", { class: "rec-about" }, say("about")), panel.count,
    make("p", { class: "rec-ways" },
      button(say("copy_all"), () => copy(text(), told)),
      button(say("save_all"), () => download(text(), fileName("plan"), "text/plain")),
      button(say("save_table"), () => download(table(), fileName("csv"), "text/csv"))),
    told, panel.clashes, panel.stray, panel.unread, wayIn());
}

function wayIn() {
  const field = make("textarea", { id: "rec-paste", rows: 5, spellcheck: "false" });
  const file = make("input", { type: "file", id: "rec-file", accept: ".plan,.csv,.txt,text/plain,text/csv" });
  const told = make("p", { class: "rec-told", role: "status", id: "rec-read" });
  file.addEventListener("change", async () => {
    if (file.files[0]) field.value = await file.files[0].text();
  });
  const read = () => {
    if (!field.value.trim()) return;
    told.replaceChildren(...bringText(field.value));
    field.value = "";
    file.value = "";
  };
  return make("details", { class: "rec-in" }, make("summary", {}, say("read_in")),
    make("p", {}, make("label", { for: "rec-file" }, say("file")), file),
    make("p", {}, make("label", { for: "rec-paste" }, say("paste")), field),
    make("p", { class: "rec-ways" }, button(say("read"), read)), told);
}

function bringText(text) {
  const read = looksLikeTable(text) ? readTable(text) : readSessions(text);
  const tally = bringIn(read, plan);
  showAll();
  const lines = read.unread.map((one) => make("li", { dir: "auto" }, say("line", { line: one.line, text: one.text })));
  return [say("read_result", tally), ...(lines.length ? [make("ul", {}, ...lines)] : [])];
}

function showPanel() {
  tellCount();
  panel.clashes.replaceChildren(...clashList());
  const strays = strayLogs(plan);
  const kept = live(book.kept);
  panel.stray.replaceChildren(...(strays.length
    ? [make("h3", {}, say("stray")), make("pre", { dir: "auto" }, sessionsText(strays))] : []));
  panel.unread.replaceChildren(...(kept.length
    ? [make("h3", {}, say("unread")), make("ul", {}, ...kept.map(keptItem))] : []));
}

function keptItem([name, one]) {
  const forget = () => {
    change((into) => { into.kept[name] = leaf({ ...one, gone: 1 }); });
    showPanel();
  };
  return make("li", {}, make("bdi", {}, one.text), " ", button(say("forget"), forget));
}

function clashList() {
  const clashes = live(book.clashes);
  if (!clashes.length) return [];
  return [make("h3", {}, say("clashes")), make("ul", {}, ...clashes.map(clashItem))];
}

function clashItem([name, clash]) {
  const mine = book.sessions?.[clash.key]?.lines?.[clash.id]?.[clash.place];
  const decide = (take) => () => {
    settle(name, take);
    showAll();
  };
  const words = say("clash", { there: clashWords(clash), here: mine ? setWords([tidy(mine) ?? mine]) : "" });
  const [keep, take] = [button(say("keep"), decide(false)), button(say("take"), decide(true))];
  return make("li", {}, make("bdi", {}, words), " ", keep, " ", take);
}

// Once for all lines that change together.
function tellSoon() {
  if (tellSoon.waits) return;
  tellSoon.waits = true;
  queueMicrotask(() => {
    tellSoon.waits = false;
    tellCount();
  });
}

function tellCount() {
  const logs = allLogs(plan);
  const sets = logs.reduce((sum, log) => sum + log.entries.reduce((part, entry) => part + entry.sets.length, 0), 0);
  panel.count.textContent = say("count", { sets, sessions: logs.length });
}
