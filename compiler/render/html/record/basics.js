// Numbers, dates and words. `data` is the block of JSON in the page; the start fills it in.
let data = null;

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

function say(name, values = {}) {
  return data.words[name].replace(/\{(\w+)\}/g, (whole, key) => values[key] ?? whole);
}

// A number as one types it, with a comma or a point, in its shortest form; null where it is none.
function numberOf(typed, most) {
  const match = /^([+-]?)(\d{1,6})(?:[.,](\d{0,3}))?$/.exec(typed.trim().replace("\u2212", "-"));
  if (!match) return null;
  const part = (match[3] ?? "").replace(/0+$/, "");
  const text = match[2].replace(/^0+(?=\d)/, "") + (part && `.${part}`);
  if (Number(text) > most) return null;
  return match[1] === "-" && text !== "0" ? `-${text}` : text;
}

// As people of the sheet's language read it; what is exported has a point always.
function shown(number) {
  return number.replace(".", data.decimal);
}

function today() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function isDate(text) {
  const at = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d\d-\d\d$/.test(text) && text > "0001" && !isNaN(at) && at.toISOString().startsWith(text);
}

function weekdayOf(date) {
  return WEEKDAYS[new Date(`${date}T00:00:00Z`).getUTCDay()];
}

function clock(seconds) {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

// Text as the language keeps it: composed characters, plain blanks, nothing that a line cannot hold.
function clean(text) {
  const plain = text.normalize("NFC").replace(/\r\n?/g, "\n").replace(/[\u00a0\u202f\u2009]/g, " ");
  return plain.replace(/[\u0000-\u0009\u000b-\u001f\u007f\u2028\u2029\ud800-\udfff]/gu, " ").trim();
}

function sameName(one, other) {
  const bare = (name) => clean(name).toLowerCase();
  return bare(one) === bare(other);
}
