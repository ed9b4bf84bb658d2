// Puts the buttons into the page, follows other tabs, shows the rest and what goes wrong.
let plan = null;
let restBar = null;
let wasOver = true;

function start() {
  // A club's own page may leave the recording out.
  const block = document.getElementById("record-data");
  if (!block) return;
  data = JSON.parse(block.textContent);
  plan = planned();
  loadBook();
  const articles = new Map([...document.querySelectorAll("[data-session]")].map((one) => [one.dataset.session, one]));
  for (const session of plan.values()) prepare(session, articles.get(session.key));
  (document.getElementById("weeks") ?? document.body.lastElementChild).after(recordsPanel());
  document.querySelector("nav.weeks p")?.append(" ", make("a", { href: "#records" }, say("records")));
  restBar = restBarOf();
  document.body.append(restBar.node);
  whenTrouble = showTrouble;
  showTrouble();
  showAll();
  follow();
  goToToday();
}

function prepare(session, article) {
  session.article = article;
  if (!session.article || !session.lines.length) {
    plan.delete(session.key);
    return;
  }
  session.opener = button(openerWords(session), () => (session.view ? closeSession(session) : openAndShow(session)), {
    class: "rec-open", "aria-expanded": "false",
  });
  const head = session.article.querySelector("header");
  if (head) head.after(session.opener);
  else session.article.prepend(session.opener);
  if (isFresh(session)) openSession(session);
}

function openAndShow(session) {
  openSession(session);
  for (const line of session.lines) changed(session, line);
}

// A session that was written in a short while ago is still going on: after a reload it is open again.
function isFresh(session) {
  const sets = Object.values(book.sessions?.[session.key]?.lines ?? {}).flatMap((line) => Object.values(line));
  return sets.some((set) => Date.now() - set.at < FRESH_MS);
}

function showAll() {
  for (const session of plan.values()) {
    if (session.view) for (const line of session.lines) arrange(session, line);
    for (const line of session.lines) if (session.view || book.sessions?.[session.key]) changed(session, line);
    if (session.view) session.readFoot();
  }
  showPanel();
  showRest();
}

function follow() {
  addEventListener("storage", (event) => {
    if (event.key !== bookKey() && event.key !== null) return;
    takeUp(event.newValue);
    showAll();
  });
  // A tab that slept may have missed what others wrote.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") {
      book = merged(book, stored());
      showAll();
    }
    schedule();
    keepAwake();
  });
  document.addEventListener("pointerdown", () => { if (restNow()) unlockAudio(); });
  addEventListener("beforeunload", (event) => { if (inTrouble && allLogs(plan).length) event.preventDefault(); });
  setInterval(showRest, 500);
}

// A phone that is opened in the gym shows the session of the day.
function goToToday() {
  const session = [...plan.values()].find((one) => one.date === today());
  if (session && !location.hash && matchMedia("(max-width: 640px)").matches) location.replace(`#${session.article.id}`);
}

// ---- rest ----------------------------------------------------------------------------------------

function restBarOf() {
  const bar = { time: make("b", { class: "rec-time" }), what: make("span") };
  bar.end = make("p", { class: "rec-hidden", role: "status" });
  const awake = make("input", { type: "checkbox", id: "rec-awake" });
  awake.checked = Boolean(book.awake?.on);
  awake.addEventListener("change", () => {
    change((into) => { into.awake = leaf({ on: awake.checked ? 1 : 0 }); });
    keepAwake();
  });
  const canLock = "wakeLock" in navigator;
  bar.box = make("aside", { class: "rec-rest", "aria-label": say("rest"), hidden: true },
    make("p", {}, bar.time, " ", bar.what),
    make("p", { class: "rec-ways" },
      button(say("longer"), () => { extendRest(); showRest(); }),
      button(say("stop"), () => { stopRest(); showRest(); }),
      ...(canLock ? [make("label", { for: "rec-awake" }, awake, " ", say("awake"))] : [])));
  bar.node = make("div", {}, bar.box, bar.end);
  return bar;
}

function showRest() {
  const now = restNow();
  restBar.box.hidden = !now;
  document.body.classList.toggle("resting", Boolean(now));
  if (now) {
    const time = clock(now.over ? now.most : now.left);
    if (restBar.time.textContent !== time) restBar.time.textContent = time;
    const words = restWords(now);
    if (restBar.what.textContent !== words) restBar.what.textContent = words;
    restBar.box.classList.toggle("over", now.over);
    if (now.over && !wasOver) endOfRest(now);
  }
  if (Boolean(now?.over ?? true) !== wasOver) keepAwake();
  wasOver = now ? now.over : true;
}

function restWords(now) {
  if (!now.over) return say(now.more ? "rest_range" : "rest_of", { name: now.name, more: clock(now.more) });
  return say(now.most ? "over_range" : "over", { name: now.name });
}

// Only the end is announced: a count-down read aloud each second would drown everything else.
function endOfRest(now) {
  restBar.end.textContent = "";
  setTimeout(() => { restBar.end.textContent = say("over", { name: now.name }); }, 100);
  navigator.vibrate?.([200, 100, 200]);
}

// ---- storage that fails --------------------------------------------------------------------------

function showTrouble() {
  document.getElementById("rec-trouble")?.remove();
  if (!inTrouble) return;
  const shownText = make("div");
  const text = () => sessionsText(allLogs(plan), asides());
  document.body.prepend(make("div", { class: "rec-trouble", id: "rec-trouble", role: "alert" },
    make("p", {}, say(inTrouble)),
    make("p", { class: "rec-ways" },
      button(say("copy_all"), () => copy(text(), shownText)),
      button(say("show_text"), () => showText(text(), shownText)),
      button(say("save_all"), () => download(text(), fileName("plan"), "text/plain"))),
    shownText));
}

// The sheet is seen first; a page in the background waits until it is looked at.
requestAnimationFrame(() => setTimeout(start));
