"""Which line may stand under which: the nesting of the language, as one table.

Comes in: syntax nodes. Goes out: a kind for each, and what a kind may hold.
"""

from __future__ import annotations

from typing import assert_never

from setwright.syntax import nodes as n

FILE = "file"

# Lines of a plan that may stand more than once.
REPEATED = ("block", "follow", "emphasis", "waive", "rule", "count", "note", "unread")

_PLAN_LINES = (
    "author", "units", "start", "microcycle", "model", "round", "bests", "follow", "warm-up", "deload", "ease-in",
    "emphasis", "waive", "rule", "count", "block", "note",
)  # fmt: skip
_MODIFIERS = ("rest", "tempo", "warm-up", "limit", "pause", "every", "advance", "test", "optional")

# A kind is what a coach would call the line: mostly its first word.
HOLDS: dict[str, tuple[str, ...]] = {
    FILE: (
        "language", "use", "plan", "template", "rules", "muscle", "group", "equipment", "exercise", "progression",
        "athlete", "session", "away",
    ),
    "plan": _PLAN_LINES,
    "template": _PLAN_LINES,
    "block": ("day", "deload", "limit", "note", "drop day"),
    "day": ("movement", "add", "superset", "circuit", "drop", "swap", "note"),
    "superset": ("movement", "add"),
    "circuit": ("movement", "add"),
    "movement": (*_MODIFIERS, "note", "swap for", "week"),
    "add": (*_MODIFIERS, "note", "swap for", "week"),
    "rules": ("rule", "count"),
    "equipment": ("loads",),
    "exercise": ("also", "pattern", "needs", "works", "swap for", "cue", "best from", "model"),
    "progression": ("when",),
    "athlete": (
        "born", "bodyweight", "units", "available", "at", "bar", "plates", "dumbbells", "kettlebells", "has", "best",
        "bests", "model", "round", "avoid", "swap", "emphasis", "away", "ease-in", "note",
    ),
    "session": ("movement", "effort", "note"),
}  # fmt: skip


def homes(kind: str) -> tuple[str, ...]:
    """The kinds under which a line of this kind may stand."""
    return tuple(parent for parent, held in HOLDS.items() if kind in held)


def kind_of(node: n.Node) -> str:
    """What a line is called in `HOLDS`."""
    match node:
        case n.DoneEntry():  # first, since a log has thousands
            return "movement"
        case n.Setting() | n.HandWeightsLine():
            return node.word
        case n.Head():
            return node.word
        case n.LanguageLine():
            return "language"
        case n.UseLine():
            return "use"
        case n.BlockHead():
            return "block"
        case n.DayHead():
            return "day"
        case n.GroupHead():
            return node.word
        case n.Entry():
            return "add" if node.added else "movement"
        case n.WeekEntry():
            return "week"
        case n.DropLine():
            return "drop" if node.slot is None else "drop day"
        case n.SwapLine():
            return "swap"
        case n.SwapForLine():
            return "swap for"
        case n.ModifierLine():
            return _kind_of_part(node.parts[0])
        case n.NoteLine():
            return "note"
        case n.DeloadLine():
            return "deload"
        case n.EaseInLine():
            return "ease-in"
        case n.FollowLine():
            return "follow"
        case n.EmphasisLine():
            return "emphasis"
        case n.RuleLine():
            return "rule"
        case n.WaiveLine():
            return "waive"
        case n.CountLine():
            return "count"
        case n.MuscleGroupLine():
            return "group"
        case n.WorksLine():
            return "works"
        case n.BestFromLine():
            return "best from"
        case n.BarLine():
            return "bar"
        case n.PlatesLine():
            return "plates"
        case n.BestLine():
            return "best"
        case n.AvoidLine():
            return "avoid"
        case n.AwayLine():
            return "away"
        case n.SessionHead():
            return "session"
        case n.ProgressionLine():
            return "when"
        case n.Unread():
            return "unread"
    assert_never(node)


def _kind_of_part(part: n.Part) -> str:
    match part:
        case n.RestPart():
            return "rest"
        case n.TempoPart():
            return "tempo"
        case n.WarmUpPart() | n.Loose():
            return "warm-up"
        case n.ItemPart():
            return part.word.split()[0]
        case n.AdvancePart():
            return "advance"
        case n.FlagPart():
            return part.word
    assert_never(part)


def called(kind: str) -> str:
    """The kind in a message: a movement's line has no word of its own."""
    if kind == FILE:
        return "the file itself"
    if kind in ("movement", "add"):
        return "a movement"
    if kind == "rule":
        return "a rule (`must`, `should`)"
    return f"`{kind}`"
