// The count-down of a rest, and its sound.
//
// It goes by the time at which the rest ends, kept in the book: so it is right after the screen was off, after a reload
// and in a tab whose timers the browser slows down. The sound is scheduled ahead on the clock of Web Audio, which runs
// on without timers.
//
// What browsers allow, from memory (the tests see that the sound is scheduled, not that it is heard): on a desk and on
// most Android phones the sound plays with the screen off; iOS stops the audio of a page once the screen is locked, and
// any system may end a page that has been hidden for long. No page can wake a phone up. Vibration is for pages in view
// only, and iOS has none. Keeping the screen on is therefore offered where there is a wake lock, which browsers give to
// pages of https and loopback, and some to files.
const STEP_S = 30;
let audio = null;
let beeps = [];
let lock = null;

function startRest(line) {
  const end = line.every ? nextStart(line) : Date.now() + line.low * 1000;
  unlockAudio();
  change((into) => { into.rest = leaf({ end, last: end + (line.high - line.low) * 1000, id: line.id, name: line.name }); });
  schedule();
  showRest();
}

// Where a set starts each so many seconds, the next one counts from the start of the last, not from its end.
function nextStart(line) {
  const before = book.rest;
  const goesOn = before?.id === line.id && Date.now() - before.end < line.every * line.low * 1000;
  return goesOn ? Math.max(before.end + line.low * 1000, Date.now()) : Date.now() + line.low * 1000;
}

function extendRest() {
  const from = Math.max(book.rest.end, Date.now());
  const end = from + STEP_S * 1000;
  change((into) => { into.rest = leaf({ ...into.rest, end, last: Math.max(into.rest.last, end) }); });
  schedule();
}

function stopRest() {
  change((into) => { into.rest = leaf({ ...into.rest, gone: 1 }); });
  schedule();
}

// What the bar shows: seconds to go, and whether they run to the end of the rest or, past it, to the range's high end.
function restNow() {
  const rest = book.rest;
  if (!rest || rest.gone) return null;
  const left = Math.ceil((rest.end - Date.now()) / 1000);
  const most = Math.ceil((rest.last - Date.now()) / 1000);
  if (most < -600) return null;
  const more = Math.round((rest.last - rest.end) / 1000);
  return { left: Math.max(left, 0), most: Math.max(most, 0), more, over: left <= 0, name: rest.name, end: rest.end };
}

// Browsers let a page sound only after it was touched; a tick is a touch, and so is any touch after a reload.
function unlockAudio() {
  try {
    audio ??= new AudioContext();
    if (audio.state !== "running") audio.resume().then(schedule, () => {});
  } catch {
    audio = null;
  }
}

// Two short tones at the end. Scheduled anew whenever the end moves or the page comes back, for the audio clock may
// have stood still meanwhile.
function schedule() {
  for (const tone of beeps.splice(0)) tone.disconnect();
  const now = restNow();
  if (!audio || audio.state !== "running" || !now || now.over) return;
  const start = audio.currentTime + (now.end - Date.now()) / 1000;
  beeps = [0, 0.3].map((after) => tone(start + after));
}

function tone(start) {
  const sound = audio.createOscillator();
  const volume = audio.createGain();
  sound.frequency.value = 880;
  volume.gain.setValueAtTime(0, start);
  volume.gain.linearRampToValueAtTime(0.4, start + 0.02);
  volume.gain.linearRampToValueAtTime(0, start + 0.2);
  sound.connect(volume).connect(audio.destination);
  sound.start(start);
  sound.stop(start + 0.25);
  return volume;
}

// The lock goes when the page is hidden; it is asked for again when the page comes back.
async function keepAwake() {
  const wanted = Boolean(book.awake?.on) && restNow() !== null && document.visibilityState === "visible";
  try {
    if (wanted && (!lock || lock.released)) lock = await navigator.wakeLock.request("screen");
    if (!wanted && lock) await lock.release();
    if (!wanted) lock = null;
  } catch {
    // The battery is low, or the system says no: the count-down goes on without.
    lock = null;
  }
}
