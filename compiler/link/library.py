"""All that the files declare, by name: movements, muscles, groups, equipment, rule sets, athletes.

Comes in: the files' statements. Goes out: `Library`, which answers look-ups and says what is near an unknown name.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import names
from setwright.link.imports import Unit
from setwright.link.movements import linked_movement
from setwright.plan import Handling, Movement, Muscle
from setwright.record import record
from setwright.source import Span
from setwright.suggest import did_you_mean
from setwright.syntax import LineReader
from setwright.syntax.nodes import Head, MuscleGroupLine, Name, Setting, Statement
from setwright.syntax.outline import Postponed


@record
class Declared:
    """One declaration and where it stands. A shipped movement's statement is read when it is asked for."""

    name: str
    span: Span
    statement: Statement | None = None
    postponed: Postponed | None = None


@record
class Group:
    """Muscles under one word."""

    word: str
    title: str
    members: tuple[str, ...]


@dataclass(slots=True)
class Library:
    """Look-ups over one compilation. Movements are read and linked when first asked for, and kept."""

    reader: LineReader
    muscles: dict[str, Muscle] = field(default_factory=dict)
    groups: dict[str, Group] = field(default_factory=dict)
    equipment: dict[str, tuple[str, Handling | None]] = field(default_factory=dict)  # title and handling
    rulesets: dict[str, Declared] = field(default_factory=dict)
    movements: dict[str, Declared] = field(default_factory=dict)  # by folded name
    aliases: dict[str, str] = field(default_factory=dict)  # folded `also` to folded name
    templates: dict[str, Declared] = field(default_factory=dict)
    athletes: list[Declared] = field(default_factory=list)
    plans: list[Declared] = field(default_factory=list)
    words: dict[str, Span] = field(default_factory=dict)  # where muscles, groups and equipment are declared
    _linked: dict[str, Movement | None] = field(default_factory=dict)

    def movement(self, name: Name, problems: list[Diagnostic]) -> Movement | None:
        """The movement called so, or None after saying that there is none."""
        folded = name.text.casefold()
        key = folded if folded in self.movements else self.aliases.get(folded, "")
        if key not in self.movements:
            help_ = self.near_movements(name.text) or (
                None if self.movements else "Perhaps `use stdlib.exercises` is missing."
            )
            problems.append(names.UNKNOWN_MOVEMENT.at(name.span, name=name.text, help=help_))
            return None
        if key not in self._linked:
            self._linked[key] = linked_movement(self, key, problems)
        return self._linked[key]

    def statement(self, declared: Declared) -> Statement:
        """The lines of a declaration."""
        if declared.statement is not None:
            return declared.statement
        assert declared.postponed is not None
        return self.reader.read_postponed(declared.postponed)

    def near_movements(self, text: str) -> str | None:
        """Did you mean: among the names of movements, or else their other names."""
        names_ = (declared.name for declared in self.movements.values())
        return did_you_mean(text, names_) or did_you_mean(text, self.aliases)

    def known_subject(self, name: Name, problems: list[Diagnostic]) -> bool:
        """True where the word is a muscle or group; else it is reported."""
        if name.text in self.muscles or name.text in self.groups:
            return True
        help_ = did_you_mean(name.text, [*self.muscles, *self.groups]) or (
            None if self.muscles else "Perhaps `use stdlib.muscles` is missing."
        )
        problems.append(names.UNKNOWN_MUSCLE.at(name.span, name=name.text, help=help_))
        return False


def declared_library(units: Iterable[Unit], reader: LineReader, problems: list[Diagnostic]) -> Library:
    """Collect the declarations of all files; a name declared twice is reported with both places."""
    library = Library(reader)
    for unit in units:
        for statement in unit.parsed.statements:
            _declare(library, statement, problems)
        for postponed in unit.parsed.postponed:
            declared = Declared(postponed.name, postponed.span, postponed=postponed)
            _put(library.movements, postponed.name.casefold(), "movement", declared, problems)
    for key, declared in list(library.movements.items()):
        _declare_aliases(library, key, declared, problems)
    return library


def _declare(library: Library, statement: Statement, problems: list[Diagnostic]) -> None:
    match statement.node:
        case Head(word="muscle", name=name, title=title):
            if _is_new(library, "muscle", name, problems):
                library.muscles[name.text] = Muscle(name.text, title or _titled(name.text))
        case MuscleGroupLine(name=name, title=title, members=members):
            if _is_new(library, "group", name, problems):
                words = tuple(member.text for member in members if library.known_subject(member, problems))
                library.groups[name.text] = Group(name.text, title or _titled(name.text), words)
        case Head(word="equipment", name=name, title=title):
            if _is_new(library, "equipment", name, problems):
                library.equipment[name.text] = (title or _titled(name.text), _handling(statement, problems))
        case Head(word="rules", name=name):
            _put(library.rulesets, name.text, "rule set", Declared(name.text, name.span, statement), problems)
        case Head(word="template", name=name):
            _put(library.templates, name.text, "template", Declared(name.text, name.span, statement), problems)
        case Head(word="exercise", name=name):
            declared = Declared(name.text, name.span, statement)
            _put(library.movements, name.text.casefold(), "movement", declared, problems)
        case Head(word="athlete", name=name):
            library.athletes.append(Declared(name.text, name.span, statement))
        case Head(word="plan", name=name):
            library.plans.append(Declared(name.text, name.span, statement))
        case _:
            pass


def _is_new(library: Library, what: str, name: Name, problems: list[Diagnostic]) -> bool:
    """Muscles and groups share one set of words, equipment has its own."""
    first = library.words.setdefault(f"equipment {name.text}" if what == "equipment" else name.text, name.span)
    if first is not name.span:
        _complain(name.text, name.span, what, first, problems)
    return first is name.span


def _put(table: dict[str, Declared], key: str, what: str, declared: Declared, problems: list[Diagnostic]) -> None:
    first = table.setdefault(key, declared)
    if first is not declared:
        _complain(declared.name, declared.span, what, first.span, problems)


def _complain(name: str, span: Span, what: str, first: Span, problems: list[Diagnostic]) -> None:
    related = (Related(first, "first declared here"),)
    problems.append(names.DECLARED_TWICE.at(span, what=what, name=name, related=related))


def _declare_aliases(library: Library, key: str, declared: Declared, problems: list[Diagnostic]) -> None:
    for text, span in _also(declared):
        folded = text.casefold()
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
