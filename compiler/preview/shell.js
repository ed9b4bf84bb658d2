// Shows the newest sheet in a frame and what the last build found over it. A sheet is loaded again only when it has
// changed; it is put back where it was read.
"use strict";

const frame = document.getElementById("sheet");
const found = document.getElementById("found");
const heading = document.getElementById("heading");
const list = document.getElementById("list");
const fold = document.getElementById("fold");
const sheets = document.getElementById("sheets");
let shown = 0; // the sheet's place
let version = 0;

new EventSource("events").addEventListener("message", (event) => take(JSON.parse(event.data)));
fold.addEventListener("click", () => setFolded(!list.hidden));

function take(news) {
  tell(news.found);
  if (news.pages.length && shown >= news.pages.length) shown = 0;
  offer(news.pages);
  if (news.version && news.version !== version) {
    version = news.version;
    load();
  }
}

function load() {
  const before = frame.contentWindow;
  const { scrollX, scrollY } = before;
  const hash = before.location.hash;
  frame.addEventListener("load", () => frame.contentWindow.scrollTo(scrollX, scrollY), { once: true });
  before.location.replace(`sheets/${shown + 1}?v=${version}${hash}`);
}

function offer(titles) {
  sheets.hidden = titles.length < 2;
  sheets.replaceChildren(
    ...titles.map((title, at) => {
      const button = make("button", title);
      button.type = "button";
      if (at === shown) button.setAttribute("aria-current", "true");
      button.addEventListener("click", () => {
        shown = at;
        offer(titles);
        load();
      });
      return button;
    }),
  );
}

function tell(records) {
  const wrong = records.filter((record) => record.severity === "error").length;
  const others = records.length - wrong;
  found.hidden = !records.length;
  found.classList.toggle("wrong", wrong > 0);
  heading.textContent = wrong
    ? `${count(wrong, "error")}: the sheet is the last one that could be built`
    : count(others, "warning");
  list.replaceChildren(...records.map(finding));
  setFolded(!wrong && others > 0);
}

function finding(record) {
  const item = make("li");
  item.className = record.severity;
  const name = make("b", `${record.severity} ${record.code} ${record.name}`);
  item.append(name, ` ${record.path}:${record.line}:${record.column}`, make("div", record.message), make("code", record.source));
  if (record.help) item.append(make("div", record.help));
  return item;
}

function setFolded(folded) {
  list.hidden = folded;
  fold.textContent = folded ? "Show" : "Fold";
  fold.setAttribute("aria-expanded", String(!folded));
}

function make(tag, text = "") {
  const made = document.createElement(tag);
  made.textContent = text;
  return made;
}

function count(number, thing) {
  return `${number} ${thing}${number === 1 ? "" : "s"}`;
}
