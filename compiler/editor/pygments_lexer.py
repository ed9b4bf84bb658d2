"""A Pygments lexer for plans.

Made by `python -m setwright.editor.highlighters`; changes by hand are lost.
"""

from __future__ import annotations

from typing import ClassVar

from pygments.lexer import RegexLexer, bygroups, words
from pygments.token import Comment, Keyword, Literal, Name, Number, Operator, Punctuation, String, Whitespace

STARTS = (
    "kettlebells",
    "progression",
    "bodyweight",
    "microcycle",
    "available",
    "dumbbells",
    "equipment",
    "otherwise",
    "emphasis",
    "exercise",
    "language",
    "optional",
    "superset",
    "template",
    "advance",
    "athlete",
    "circuit",
    "ease-in",
    "pattern",
    "session",
    "warm-up",
    "author",
    "deload",
    "effort",
    "follow",
    "muscle",
    "plates",
    "should",
    "avoid",
    "bests",
    "block",
    "count",
    "every",
    "group",
    "limit",
    "loads",
    "model",
    "needs",
    "pause",
    "round",
    "rules",
    "start",
    "tempo",
    "units",
    "waive",
    "weeks",
    "works",
    "also",
    "away",
    "best",
    "born",
    "drop",
    "must",
    "note",
    "plan",
    "rest",
    "swap",
    "test",
    "week",
    "when",
    "add",
    "bar",
    "cue",
    "day",
    "has",
    "use",
    "at",
)
UNITS = (
    "RIR",
    "RPE",
    "min",
    "kg",
    "lb",
    "h",
    "m",
    "s",
)
OTHERS = (
    "collars",
    "running",
    "before",
    "repeat",
    "rounds",
    "after",
    "shift",
    "times",
    "days",
    "from",
    "hold",
    "last",
    "like",
    "load",
    "reps",
    "sets",
    "skip",
    "then",
    "all",
    "any",
    "for",
    "log",
    "max",
    "per",
    "set",
    "as",
    "by",
    "in",
    "of",
    "to",
)
WEEKDAYS = (
    "Mon",
    "Tue",
    "Wed",
    "Thu",
    "Fri",
    "Sat",
    "Sun",
)


class PlanLexer(RegexLexer):
    """Training plans in the language of Setwright."""

    name = "Setwright plan"
    url = ""
    aliases: ClassVar[list[str]] = ["setwright"]
    filenames: ClassVar[list[str]] = ["*.plan"]
    version_added = ""
    tokens: ClassVar[dict[str, list[object]]] = {
        "root": [
            (
                words(STARTS, prefix=r"^([ \t]*)", suffix=r"(?![\w-])"),
                bygroups(Whitespace, Keyword.Declaration),  # type: ignore[no-untyped-call]
            ),
            (r"\s+?", Whitespace),
            (r"#.*", Comment.Single),
            (r'"(?:[^"\\\n]|\\.)*"', String.Double),
            (r"\d{4}-\d\d-\d\d(?!\d)", Literal.Date),
            (r"\d+-\d+-(?:\d+|[xX])-\d+", Number),
            (r"\d+:\d\d(?!\d)", Number),
            (r"\d+\.\d+", Number.Float),
            (r"\d+", Number.Integer),
            (words(UNITS, suffix=r"(?![\w-])"), Keyword.Type),
            (r"%|/\s*(?:side|week)\b", Keyword.Type),
            (words(WEEKDAYS, suffix=r"(?!\w)"), Keyword.Constant),
            (words((*STARTS, *OTHERS), suffix=r"(?![\w-])"), Keyword),
            (r"[xX×](?![^\W\d_])|->|→|<=|>=|≤|≥|\.\.\.|…|[<>=@+\-−]", Operator),
            (r"[^\W\d_a-z][\w'’\-]*", Name.Class),
            (r"[^\W\d_][\w\-\u0300-\u036f]*", Name),
            (r"[\[\]():,./']", Punctuation),
        ]
    }
