"""What other programs highlight plans with, made from the grammar's own words: a TextMate grammar and a Pygments lexer.

Comes in: the terminals of the grammar. Goes out: the two files' text. Run `python -m setwright.editor.highlighters`
after a change of the grammar; a test says so when it was forgotten.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Final

from setwright.files import package_folder
from setwright.plan import WEEKDAYS
from setwright.record import record
from setwright.syntax.tokens import TokenReader

TEXTMATE: Final = "setwright.tmLanguage.json"
LEXER: Final = "pygments_lexer.py"
SCOPE: Final = "source.setwright"
_UNITS: Final = ("KG", "LB", "SECONDS", "MINUTES", "METRES", "HOURS", "RPE", "RIR")


@record
class Words:
    """The words of the language: those that lines begin with, units of numbers, and all others."""

    starts: tuple[str, ...]
    units: tuple[str, ...]
    others: tuple[str, ...]


def words() -> Words:
    """The table of the grammar, sorted, longer words before those that they begin with."""
    reader = TokenReader()
    texts = {name: text for name, text in reader.words.items() if text[0].isalpha()}
    first = reader.expected("")
    units = {texts[name] for name in _UNITS}
    starts = {text for name, text in texts.items() if name in first} - units
    return Words(_sorted(starts), _sorted(units), _sorted({*texts.values()} - starts - units))


def _sorted(texts: set[str]) -> tuple[str, ...]:
    return tuple(sorted(texts, key=lambda text: (-len(text), text)))


# ---- TextMate ------------------------------------------------------------------------------------


def textmate() -> str:
    """The TextMate grammar as JSON; its expressions are Oniguruma's."""
    made = {
        "$schema": "https://raw.githubusercontent.com/martinring/tmlanguage/master/tmlanguage.json",
        "name": "Setwright plan",
        "scopeName": SCOPE,
        "fileTypes": ["plan"],
        "patterns": [{"include": f"#{name}"} for name, _ in _rules()],
        "repository": dict(_rules()),
    }
    return json.dumps(made, indent=2, ensure_ascii=False) + "\n"


def _rules() -> tuple[tuple[str, dict[str, object]], ...]:
    """What is looked for, in this order."""
    table = words()
    return (
        ("comment", _rule("comment.line.number-sign", r"#.*$")),
        ("string", _string()),
        ("date", _rule("constant.numeric.date", r"\b\d{4}-\d\d-\d\d(?!\d)")),
        ("tempo", _rule("constant.numeric.tempo", r"\b\d+-\d+-(?:\d+|[xX])-\d+")),
        ("time", _rule("constant.numeric.time", r"\b\d+:\d\d(?!\d)")),
        (
            "unit",
            _rule("keyword.other.unit", rf"(?<![^\W\d])(?:{_either(table.units)})(?![\w-])|%|/\s*(?:side|week)\b"),
        ),
        ("number", _rule("constant.numeric", r"(?<![^\W\d])\d+(?:\.\d+)?")),
        ("start", _rule("keyword.control", rf"^\s*(?:{_either(table.starts)})(?![\w-])")),
        ("word", _rule("keyword.other", rf"(?<![\w.-])(?:{_either((*table.starts, *table.others))})(?![\w-])")),
        ("weekday", _rule("constant.language.weekday", rf"\b(?:{_either(WEEKDAYS)})\b")),
        ("name", _rule("entity.name.type", r"\p{Lu}[\p{L}\p{N}\p{M}_'’.\-]*(?: +\p{Lu}[\p{L}\p{N}\p{M}_'’.\-]*)*")),
        ("operator", _rule("keyword.operator", r"->|→|<=|>=|≤|≥|\.\.\.|…|[<>=@+\-−×]|(?<=[\d\s\])])[xX](?=[\s\d\[(])")),
        ("plain", _rule("variable.other", r"\p{L}[\p{L}\p{N}\p{M}_-]*")),
    )


def _rule(scope: str, match: str) -> dict[str, object]:
    return {"name": f"{scope}.setwright", "match": match}


def _string() -> dict[str, object]:
    escape = _rule("constant.character.escape", r"\\.")
    return {"name": "string.quoted.double.setwright", "begin": '"', "end": '"|$', "patterns": [escape]}


def _either(texts: tuple[str, ...]) -> str:
    return "|".join(texts)


# ---- Pygments ------------------------------------------------------------------------------------

_LEXER: Final = '''"""A Pygments lexer for plans.

Made by `python -m setwright.editor.highlighters`; changes by hand are lost.
"""

from __future__ import annotations

from typing import ClassVar

from pygments.lexer import RegexLexer, bygroups, words
from pygments.token import Comment, Keyword, Literal, Name, Number, Operator, Punctuation, String, Whitespace

STARTS = (
{starts}
)
UNITS = (
{units}
)
OTHERS = (
{others}
)
WEEKDAYS = (
{weekdays}
)


class PlanLexer(RegexLexer):
    """Training plans in the language of Setwright."""

    name = "Setwright plan"
    url = ""
    aliases: ClassVar[list[str]] = ["setwright"]
    filenames: ClassVar[list[str]] = ["*.plan"]
    version_added = ""
    tokens: ClassVar[dict[str, list[object]]] = {{
        "root": [
            (
                words(STARTS, prefix=r"^([ \\t]*)", suffix=r"(?![\\w-])"),
                bygroups(Whitespace, Keyword.Declaration),  # type: ignore[no-untyped-call]
            ),
            (r"\\s+?", Whitespace),
            (r"#.*", Comment.Single),
            (r\'"(?:[^"\\\\\\n]|\\\\.)*"\', String.Double),
            (r"\\d{{4}}-\\d\\d-\\d\\d(?!\\d)", Literal.Date),
            (r"\\d+-\\d+-(?:\\d+|[xX])-\\d+", Number),
            (r"\\d+:\\d\\d(?!\\d)", Number),
            (r"\\d+\\.\\d+", Number.Float),
            (r"\\d+", Number.Integer),
            (words(UNITS, suffix=r"(?![\\w-])"), Keyword.Type),
            (r"%|/\\s*(?:side|week)\\b", Keyword.Type),
            (words(WEEKDAYS, suffix=r"(?!\\w)"), Keyword.Constant),
            (words((*STARTS, *OTHERS), suffix=r"(?![\\w-])"), Keyword),
            (r"[xX×](?![^\\W\\d_])|->|→|<=|>=|≤|≥|\\.\\.\\.|…|[<>=@+\\-−]", Operator),
            (r"[^\\W\\d_a-z][\\w\'’\\-]*", Name.Class),
            (r"[^\\W\\d_][\\w\\-\\u0300-\\u036f]*", Name),
            (r"[\\[\\]():,./\']", Punctuation),
        ]
    }}
'''


def lexer() -> str:
    """The module of the Pygments lexer."""
    table = words()
    return _LEXER.format(
        starts=_tuple(table.starts), units=_tuple(table.units), others=_tuple(table.others), weekdays=_tuple(WEEKDAYS)
    )


def _tuple(texts: tuple[str, ...]) -> str:
    return "\n".join(f'    "{text}",' for text in texts)


def files() -> tuple[tuple[Path, str], ...]:
    """Where the two files lie, and what they should hold."""
    return (
        (package_folder("setwright.grammar") / TEXTMATE, textmate()),
        (Path(__file__).with_name(LEXER), lexer()),
    )


if __name__ == "__main__":
    for file, text in files():
        file.write_text(text, encoding="utf-8", newline="\n")
