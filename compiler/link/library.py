"""All that the files declare, by name: movements, muscles, groups, equipment, rule sets, athletes.

`declarations` fills it; it answers look-ups and says what is near an unknown name.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Mapping
from dataclasses import dataclass, field

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names, rules
from setwright.link.missing import missing_use
from setwright.link.movements import link_movement
from setwright.link.scopes import Scopes, home_of
from setwright.plan import Handling, Movement, Muscle
from setwright.record import record
from setwright.source import Source, Span
from setwright.suggest import did_you_mean, meant
from setwright.syntax import LineReader
from setwright.syntax.nodes import Name, Setting, Statement
from setwright.syntax.outline import Postponed, pattern_of

EQUIPMENT = "equipment "  # before its words, which are a set of their own


MOST_HELPED = 500  # unknown names; a file of thousands needs another kind of help, and each is compared with all known


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
    scopes: Scopes = field(default_factory=Scopes)
    muscles: dict[str, Muscle] = field(default_factory=dict)
    groups: dict[str, Group] = field(default_factory=dict)
    equipment: dict[str, tuple[str, Handling | None]] = field(default_factory=dict)  # title and handling
    rulesets: dict[str, Declared] = field(default_factory=dict)
    movements: dict[str, Declared] = field(default_factory=dict)  # by folded name
    aliases: dict[str, str] = field(default_factory=dict)  # folded `also` to folded name
    templates: dict[str, Declared] = field(default_factory=dict)
    progressions: dict[str, Declared] = field(default_factory=dict)
    shipped_progressions: Callable[[], dict[str, Declared]] = dict  # read when a name is declared nowhere else
    athletes: list[Declared] = field(default_factory=list)
    plans: list[Declared] = field(default_factory=list)
    words: dict[str, Span] = field(default_factory=dict)  # where muscles, groups and equipment are declared
    plain_names: dict[str, str] = field(default_factory=dict)  # of movements kept under a prefix
    _linked: dict[str, Movement | None] = field(default_factory=dict)
    _patterns: frozenset[str] | None = None
    _shipped: dict[str, Declared] | None = None
    _misses: int = 0

    def movement(self, name: Name, problems: list[Diagnostic]) -> Movement | None:
        """The movement called so, or None after saying that there is none."""
        key = self.movement_key(name)
        if key is None:
            help_, fix = self.near_movements(name), None
            if help_ is None and not self.movements:
                help_, fix = missing_use("exercises", name)
            problems.append(names.UNKNOWN_MOVEMENT.at(name.span, name=name.text, help=help_, fix=fix))
            return None
        if key not in self._linked:
            link_movement(self, key, self._linked, problems)
        return self._linked[key]

    def linked(self, key: str) -> Movement | None:
        """The movement kept under a folded name where it was asked for before; nothing is linked for this."""
        return self._linked.get(key)

    def statement(self, declared: Declared) -> Statement:
        """The lines of a declaration."""
        if declared.statement is not None:
            return declared.statement
        assert declared.postponed is not None
        return self.reader.read_postponed(declared.postponed)

    def patterns(self) -> frozenset[str]:
        """Every pattern that a movement names, without linking or even reading those that nobody asked for."""
        if self._patterns is None:
            named = (_pattern(declared) for declared in self.movements.values())
            self._patterns = frozenset(pattern for pattern in named if pattern)
        return self._patterns

    def movement_key(self, name: Name) -> str | None:
        """The folded name under which the movement is kept that a name means where it was written."""
        for text, files in self.scopes.meanings(name):
            folded = text.casefold()
            key = folded if folded in self.movements else self.aliases.get(folded)
            if key is not None and (files is None or self.movements[key].span.source in files):
                return key
        return None

    def near_movements(self, name: Name) -> str | None:
        """Did you mean: among the names of movements, or else their other names, as they could be written."""
        declared = [(declared.name, declared.span.source) for declared in self.movements.values()]
        others = ((_capitals(other), self.movements[key].span.source) for other, key in self.aliases.items())
        return self.near(name, declared) or self.near(name, others)

    def near(self, name: Name, kept: Iterable[tuple[str, Source]]) -> str | None:
        """Did you mean: among names as the file could write them; or that its prefix is none."""
        spoken = tuple(self.scopes.spoken(kept, home_of(name)))
        same = [one for one in spoken if one.partition(".")[2].casefold() == name.text.casefold()]
        self._misses += 1
        close = did_you_mean(name.text, spoken) if self._misses <= MOST_HELPED else None
        found = close or meant(name.text, same[:1])
        if found is None and not self.scopes.has_prefix(name):
            return f"This file uses nothing as `{name.text.partition('.')[0]}`."
        return found

    def declared(self, table: Mapping[str, Declared], name: Name) -> Declared | None:
        """What a word of the table means where it was written."""
        for text, files in self.scopes.meanings(name):
            found = table.get(text)
            if found is not None and (files is None or found.span.source in files):
                return found
        return None

    def near_declared(self, table: Mapping[str, Declared], name: Name) -> str | None:
        """Did you mean: among the words of such a table."""
        return self.near(name, ((kept, declared.span.source) for kept, declared in table.items()))

    def progression(self, name: Name) -> Declared | None:
        """The progression called so: one that the files declare, else a shipped one, which is known everywhere."""
        found = self.declared(self.progressions, name)
        return found if found is not None or name.prefixed else self._known_everywhere().get(name.text)

    def near_progressions(self, name: Name) -> str | None:
        """Did you mean: among all progressions."""
        return self.near_declared({**self._known_everywhere(), **self.progressions}, name)

    def _known_everywhere(self) -> dict[str, Declared]:
        if self._shipped is None:
            self._shipped = self.shipped_progressions()
        return self._shipped

    def known_subject(self, name: Name, problems: list[Diagnostic], *, patterns: bool = False) -> str | None:
        """The muscle or group that a word means, or None after saying that there is none.

        With `patterns` a movement pattern may have been meant, and is among what is near.
        """
        found = self._word(name, "", (self.muscles, self.groups))
        if found is None:
            help_, fix = self._near_word(name, "", (*self.muscles, *self.groups)), None
            if help_ is None and not self.muscles:
                help_, fix = missing_use("muscles", name)
            if help_ is None and patterns:
                help_ = did_you_mean(name.text, sorted(self.patterns()))
            problems.append(names.UNKNOWN_MUSCLE.at(name.span, name=name.text, help=help_, fix=fix))
        return found

    def is_pattern(self, name: Name) -> bool:
        """True where a word after `for` means a movement pattern, and no muscle or group.

        Where no movement is declared, as in a file of rules alone, that is any word that is not near a muscle or group.
        """
        if self._word(name, "", (self.muscles, self.groups)) is not None:
            return False
        if self.patterns() or not self.muscles:
            return name.text in self.patterns()
        return self._near_word(name, "", (*self.muscles, *self.groups)) is None

    def known_side(self, name: Name, problems: list[Diagnostic]) -> str:
        """The muscle, group or movement pattern that a word of a balance means; the word after saying that it is none.

        Where no movement is declared, as in a file of rules alone, any word may be a pattern.
        """
        found = self._word(name, "", (self.muscles, self.groups))
        if found is None and self.patterns() and name.text not in self.patterns():
            help_ = did_you_mean(name.text, (*sorted(self.patterns()), *self.muscles, *self.groups))
            problems.append(rules.UNKNOWN_SIDE.at(name.span, name=name.text, help=help_))
        return found or name.text

    def known_muscle(self, name: Name, problems: list[Diagnostic]) -> str | None:
        """The muscle that a word means, or None after saying that there is none."""
        found = self._word(name, "", (self.muscles,))
        if found is None:
            help_ = self._near_word(name, "", self.muscles)
            problems.append(names.UNKNOWN_MUSCLE.at(name.span, name=name.text, help=help_))
        return found

    def known_equipment(self, name: Name, problems: list[Diagnostic]) -> str | None:
        """The equipment that a word means, or None after saying that there is none."""
        found = self._word(name, EQUIPMENT, (self.equipment,))
        if found is None:
            help_ = self._near_word(name, EQUIPMENT, self.equipment) or self._equipment_in(name)
            problems.append(names.UNKNOWN_EQUIPMENT.at(name.span, name=name.text, help=help_))
        return found

    def _equipment_in(self, name: Name) -> str:
        """Did you mean: the equipment that a longer word holds, as `squat-rack` holds `rack`; or where it is listed."""
        parts = name.text.split("-")
        held = [word for word in self.equipment if set(word.split("-")) <= set(parts)]
        return meant(name.text, held) or "`setwright library` lists all there is."

    def _word(self, name: Name, kind: str, tables: tuple[Container[str], ...]) -> str | None:
        for text, files in self.scopes.meanings(name):
            if any(text in table for table in tables) and (files is None or self.words[kind + text].source in files):
                return text
        return None

    def _near_word(self, name: Name, kind: str, words: Iterable[str]) -> str | None:
        return self.near(name, ((word, self.words[kind + word].source) for word in words))


def _pattern(declared: Declared) -> str | None:
    if declared.postponed is not None:
        return pattern_of(declared.postponed)
    assert declared.statement is not None
    lines = (line.node for line in declared.statement.body)
    settings = (node for node in lines if isinstance(node, Setting) and node.word == "pattern")
    return next((value.text for setting in settings for value in setting.values if isinstance(value, Name)), None)


def _capitals(name: str) -> str:
    """Another name, which is kept in small letters, as a line could write it; a prefix stays small."""
    prefix, point, rest = name.rpartition(".")
    return prefix + point + " ".join(word[:1].upper() + word[1:] for word in rest.split(" "))
