"""Collects what the files declare.

Comes in: the statements of all files, imports first. Goes out: a `Library`; what is declared twice is shown at both.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import names
from setwright.link.imports import Unit
from setwright.link.library import EQUIPMENT, Declared, Group, Library
from setwright.link.scopes import Scopes
from setwright.plan import Handling, Muscle
from setwright.source import Span
from setwright.suggest import did_you_mean
from setwright.syntax import LineReader
from setwright.syntax.nodes import Head, MuscleGroupLine, Name, Setting, Statement


def declared_library(
    units: Iterable[Unit], reader: LineReader, problems: list[Diagnostic], scopes: Scopes | None = None
) -> Library:
    """Collect the declarations of all files; a name declared twice is reported with both places."""
    library = Library(reader, scopes or Scopes())
    for unit in units:
        for statement in unit.parsed.statements:
            _declare(library, statement, problems)
        for postponed in unit.parsed.postponed:
            kept = library.scopes.kept(postponed.name, postponed.span.source)
            declared = Declared(kept, postponed.span, postponed=postponed)
            _put_movement(library, declared, postponed.name, problems)
    for key, declared in list(library.movements.items()):
        _declare_aliases(library, key, declared, problems)
    return library


def _declare(library: Library, statement: Statement, problems: list[Diagnostic]) -> None:
    match statement.node:
        case Head(word="muscle", name=name, title=title):
            if _is_new(library, "muscle", name, problems):
                word = library.scopes.kept(name.text, name.span.source)
                library.muscles[word] = Muscle(word, title or _titled(name.text))
        case MuscleGroupLine(name=name, title=title, members=members):
            if _is_new(library, "group", name, problems):
                found = (library.known_subject(member, problems) for member in members)
                words = tuple(member for member in found if member is not None)
                word = library.scopes.kept(name.text, name.span.source)
                library.groups[word] = Group(word, title or _titled(name.text), words)
        case Head(word="equipment", name=name, title=title):
            if _is_new(library, "equipment", name, problems):
                word = library.scopes.kept(name.text, name.span.source)
                library.equipment[word] = (title or _titled(name.text), _handling(statement, problems))
        case Head(word="rules", name=name):
            _put(library.rulesets, "rule set", _kept(library, name, statement), problems)
        case Head(word="template", name=name):
            _put(library.templates, "template", _kept(library, name, statement), problems)
        case Head(word="progression", name=name):
            _put(library.progressions, "progression", _kept(library, name, statement), problems)
        case Head(word="exercise", name=name):
            _put_movement(library, _kept(library, name, statement), name.text, problems)
        case Head(word="athlete" | "plan" as what, name=name) if not name.text.strip():
            problems.append(names.EMPTY_NAME.at(name.span, what=what))
        case Head(word="athlete", name=name):
            library.athletes.append(Declared(name.text, name.span, statement))
        case Head(word="plan", name=name):
            library.plans.append(Declared(name.text, name.span, statement))
        case _:
            pass


def _is_new(library: Library, what: str, name: Name, problems: list[Diagnostic]) -> bool:
    """Muscles and groups share one set of words, equipment has its own."""
    word = library.scopes.kept(name.text, name.span.source)
    first = library.words.setdefault(EQUIPMENT + word if what == "equipment" else word, name.span)
    if first is not name.span:
        _complain(name.text, name.span, what, first, problems)
    return first is name.span


def _kept(library: Library, name: Name, statement: Statement) -> Declared:
    return Declared(library.scopes.kept(name.text, name.span.source), name.span, statement)


def _put(table: dict[str, Declared], what: str, declared: Declared, problems: list[Diagnostic]) -> None:
    first = table.setdefault(declared.name, declared)
    if first is not declared:
        _complain(declared.name, declared.span, what, first.span, problems)


def _put_movement(library: Library, declared: Declared, plain: str, problems: list[Diagnostic]) -> None:
    first = library.movements.setdefault(declared.name.casefold(), declared)
    if first is not declared:
        _complain(plain, declared.span, "movement", first.span, problems)
    if declared.name != plain:
        library.plain_names[declared.name] = plain


def _complain(name: str, span: Span, what: str, first: Span, problems: list[Diagnostic]) -> None:
    related = (Related(first, "first declared here"),)
    problems.append(names.DECLARED_TWICE.at(span, what=what, name=name, related=related))


def _declare_aliases(library: Library, key: str, declared: Declared, problems: list[Diagnostic]) -> None:
    for text, span in _also(declared):
        folded = library.scopes.kept(text, span.source).casefold()
        other = library.movements.get(library.aliases.get(folded, folded))
        if other is None:
            library.aliases[folded] = key
        elif other is not declared:
            _complain(text, span, "movement", other.span, problems)


def _also(declared: Declared) -> list[tuple[str, Span]]:
    if declared.postponed is not None:
        return [(text, declared.span) for text in declared.postponed.also]
    assert declared.statement is not None
    lines = (line.node for line in declared.statement.body)
    settings = (node for node in lines if isinstance(node, Setting) and node.word == "also")
    return [(value.text, value.span) for setting in settings for value in setting.values if isinstance(value, Name)]


def _handling(statement: Statement, problems: list[Diagnostic]) -> Handling | None:
    words = {handling.value: handling for handling in Handling}
    for line in statement.body:
        if isinstance(line.node, Setting) and isinstance(line.node.values[0], Name):
            name = line.node.values[0]
            if name.text in words:
                return words[name.text]
            help_ = did_you_mean(name.text, words) or f"It takes {', '.join(words)}."
            problems.append(names.UNKNOWN_WORD.at(name.span, word=name.text, after="loads", help=help_))
    return None


def _titled(word: str) -> str:
    return word.replace("-", " ").capitalize()
