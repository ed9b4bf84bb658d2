"""The line parser, from the tables beside the grammar or, where they do not fit, from the grammar itself.

Building an LALR automaton takes longer than compiling a plan, so its tables are kept in `grammar/tables.json`.
They are used only by the release of lark that made them and for the grammar they were made from.
Run `PYTHONHASHSEED=0 python -m setwright.syntax.tables` after a change of the grammar; a test holds the two together.
(Lark numbers its states in an order that depends on the seed.)
"""

from __future__ import annotations

import json
from hashlib import sha256
from typing import Any, cast

import lark
from lark import Lark, Transformer

from setwright.files import package_folder
from setwright.syntax.lexer import LineLexer

GRAMMAR = "setwright.lark"
TABLES = "tables.json"
_OPTIONS: dict[str, Any] = {"parser": "lalr", "lexer": "contextual", "maybe_placeholders": False}
_PLUGINS = {"ContextualLexer": LineLexer}


def line_parser(transformer: Transformer[Any, Any] | None) -> Lark:
    """A parser of single lines that calls `transformer` as it reduces, or makes trees where there is none."""
    folder = package_folder("setwright.grammar")
    grammar = folder.joinpath(GRAMMAR).read_text(encoding="utf-8")
    tables = folder.joinpath(TABLES)
    if tables.is_file():
        kept = json.loads(tables.read_text(encoding="utf-8"))
        if kept["lark"] == lark.__version__ and kept["grammar"] == fingerprint(grammar):
            return _from_tables(kept["tables"], transformer)
    return Lark(grammar, transformer=transformer, _plugins=_PLUGINS, **_OPTIONS)


def made_tables(grammar: str) -> str:
    """The text of `tables.json` for a grammar."""
    from lark.grammar import Rule
    from lark.lexer import TerminalDef

    data, memo = Lark(grammar, **_OPTIONS).memo_serialize([TerminalDef, Rule])
    kept = {"lark": lark.__version__, "grammar": fingerprint(grammar), "tables": {"data": data, "memo": memo}}
    return json.dumps(kept, separators=(",", ":"), ensure_ascii=False) + "\n"


def fingerprint(grammar: str) -> str:
    """What tells one grammar from another."""
    return sha256(grammar.encode()).hexdigest()


def _from_tables(tables: dict[str, Any], transformer: Transformer[Any, Any] | None) -> Lark:
    data, memo = tables["data"], {int(key): value for key, value in tables["memo"].items()}
    automaton = data["parser"]["parser"]
    automaton["tokens"] = {int(key): name for key, name in automaton["tokens"].items()}
    automaton["states"] = {
        int(state): {int(token): tuple(action) for token, action in actions.items()}
        for state, actions in automaton["states"].items()
    }
    # What lark's own standalone parsers call; the tables are those of this very release.
    made = Lark._load_from_dict(data, memo, transformer=transformer, _plugins=_PLUGINS)  # type: ignore[no-untyped-call]
    return cast("Lark", made)


if __name__ == "__main__":
    home = package_folder("setwright.grammar")
    home.joinpath(TABLES).write_text(made_tables(home.joinpath(GRAMMAR).read_text("utf-8")), "utf-8", newline="\n")
