"""What the recording script says, in a sheet's language.

Comes in: a language. Goes out: a text for each name that the script knows; `{...}` in it is filled in there.
"""

from __future__ import annotations

from setwright.render.language import Language


def spoken(language: Language) -> dict[str, str]:
    """The script's words by their names."""
    return {**_of_sets(language), **_of_sessions(language), **_of_rest(language), **_of_records(language)}


def _of_sets(language: Language) -> dict[str, str]:
    text = language.text
    return {
        "set": text("set {number}"),
        "done": text("Set {number} done"),
        "load": text("load in {unit}"),
        "load_hand": text("load in each hand in {unit}"),
        "on_body": text("added to bodyweight in {unit}"),
        "sign": text("add or take off"),
        "reps": text("repetitions"),
        "seconds": text("seconds"),
        "metres": text("metres"),
        "side": text("for each side"),
        "head_hand": text("Loads are those of one hand."),
        "head_body": text("Loads are added to bodyweight; with a minus they help."),
        "head_effort": text("Effort @ {scale}."),
        "each_hand": text("in each hand"),
        "best": text("estimated best {best} ({model})"),
        "best_least": text("best at least {best} ({model})"),
        "past": text("no estimate past 10 repetitions to failure"),
        "top": text("Highest so far: {best}"),
        **_of_slips(language),
    }


def _of_slips(language: Language) -> dict[str, str]:
    text = language.text
    return {
        "wrong": text("The set is left out until this is put right."),
        "wrong_load": text("The load is a number from 0 to {most} {unit}."),
        "wrong_body": text("The added load is a number up to {most} {unit}, with a minus where it helps."),
        "wrong_reps": text("Repetitions are a whole number up to {most}."),
        "wrong_seconds": text("Seconds are a number up to {most}."),
        "wrong_metres": text("Metres are a number up to {most}."),
        "wrong_effort": text("{scale} is a number from {low} to {high}."),
    }


def _of_sessions(language: Language) -> dict[str, str]:
    text = language.text
    return {
        "open": text("Record this session"),
        "go_on": text("Sets recorded: {count}. Show them"),
        "close": text("Close the recording"),
        "add": text("Add a set"),
        "remove": text("Remove the last set"),
        "date": text("Done on"),
        "note": text("Note"),
        "copy_one": text("Copy this session"),
        "save_one": text("Save this session as a file"),
    }


def _of_rest(language: Language) -> dict[str, str]:
    text = language.text
    return {
        "rest": text("Rest"),
        "rest_of": text("rest after {name}"),
        "rest_range": text("rest after {name}, then up to {more} more"),
        "over": text("Rest is over: {name}"),
        "over_range": text("left of the longest rest: {name}"),
        "longer": text("30 s more"),
        "stop": text("Stop"),
        "awake": text("Keep screen on"),
    }


def _of_records(language: Language) -> dict[str, str]:
    text = language.text
    return {
        "records": text("Records"),
        "about": text(
            "What you record stays in this browser. Copy or save it for your coach: the lines go into the log as they "
            "are."
        ),
        "count": text("Sets recorded: {sets}. Sessions: {sessions}."),
        "copy_all": text("Copy everything"),
        "save_all": text("Save everything as a file"),
        "save_table": text("Save everything as a table (CSV)"),
        "copied": text("Copied."),
        "copy_by_hand": text("This browser does not let the page copy: copy the text below by hand."),
        "text_to_copy": text("Text to copy"),
        "show_text": text("Show the text"),
        "read_in": text("Read records in"),
        "file": text("A file of sessions or a table"),
        "paste": text("Or paste its text"),
        "read": text("Read in"),
        "read_result": text(
            "Sets added: {added}. Here already: {known}. Different, to be decided: {differs}. Lines not read: {unread}."
        ),
        "line": text("Line {line}: {text}"),
        "unread": text("Lines that could not be read"),
        "forget": text("Forget this line"),
        "stray": text("Recorded, not on this sheet"),
        "clashes": text("Read in, but different from what is recorded here"),
        "clash": text("Read in: {there}. Recorded here: {here}."),
        "keep": text("Keep what is here"),
        "take": text("Take what was read in"),
        "full": text(
            "The browser's storage is full. What you record now is kept only while this page is open: copy it before "
            "you close the page."
        ),
        "blocked": text(
            "This browser does not let the page store anything. What you record is kept only while this page is open: "
            "copy it before you close the page."
        ),
        "damaged": text(
            "What was stored before could not be read. It was put aside in the browser's storage, and a new record "
            "begun."
        ),
    }
