"""Everything a library holds as entries to search: a line each, and the whole of one.

Comes in: the compiler's `Library`. Goes out: entries in the order of the library.
"""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from setwright.cli.templates import Template, comment_over, templates
from setwright.link.library import Declared, Library
from setwright.plan import Handling, Movement
from setwright.quantities import plain
from setwright.record import record
from setwright.source import Span
from setwright.syntax.nodes import Name

_WIDTH = 100

_LOADS = {
    Handling.BAR: "the athlete's bar and pairs of plates",
    Handling.OTHER_BAR: "a bar of its own and pairs of plates",
    Handling.PAIR: "one in each hand, the load is per hand",
    Handling.ONE: "one",
    Handling.STACK: "a stack",
}


@record
class Entry:
    """One thing: its kind and name, what it is in a few words, other words it is found by, and all about it."""

    kind: str
    name: str
    brief: str
    words: tuple[str, ...]
    whole: tuple[str, ...]

    def is_called(self, asked: str) -> bool:
        """True where that is its name."""
        return asked == self.name.casefold()

    def is_about(self, asked: str) -> bool:
        """True where the asked-for letters stand in its name or in what it is."""
        return asked in self.name.casefold() or asked in self.brief.casefold() or any(asked in w for w in self.words)


def entries(library: Library) -> tuple[Entry, ...]:
    """All of them, kind by kind."""
    movements = list(_linked(library))
    return (
        *(_movement(library, movement) for movement in movements),
        *_muscles(library, movements),
        *_groups(library),
        *_equipment(library, movements),
        *(_ruleset(declared) for declared in library.rulesets.values()),
        *(_progression(declared) for declared in library.progressions.values()),
        *(_template(template) for template in templates(library)),
    )


def _linked(library: Library) -> Iterator[Movement]:
    for declared in library.movements.values():
        movement = library.movement(Name(declared.name, declared.span), [])
        if movement is not None:
            yield movement


def _movement(library: Library, movement: Movement) -> Entry:
    also = tuple(other for other, key in library.aliases.items() if key == movement.name.casefold())
    works = ", ".join(f"{muscle} {plain(share)}" for muscle, share in movement.works)
    facts = (
        ("pattern", movement.pattern),
        ("works", works),
        ("needs", ", ".join(movement.needs)),
        ("load", _LOADS[movement.handling] if movement.handling else None),
        ("best from", f"{movement.best_from[0]} {plain(movement.best_from[1])}%" if movement.best_from else None),
        ("swap for", ", ".join(movement.swaps)),
        ("also", ", ".join(also)),
        ("cue", movement.cue),
        ("declared", str(movement.span)),
    )
    brief = "; ".join(part for part in (movement.pattern, works, ", ".join(movement.needs)) if part)
    return Entry("movement", movement.name, brief, also, (movement.name, *_facts(facts)))


def _muscles(library: Library, movements: list[Movement]) -> Iterator[Entry]:
    for word, muscle in library.muscles.items():
        within = ", ".join(group.word for group in library.groups.values() if word in group.members)
        credited = sorted(
            ((share, movement.name) for movement in movements for name, share in movement.works if name == word),
            key=lambda pair: (-pair[0], pair[1]),
        )
        facts = (
            ("name", muscle.title),
            ("groups", within),
            ("declared", _place(library, word)),
            ("worked by", ", ".join(f"{name} {plain(share)}" for share, name in credited)),
        )
        yield Entry("muscle", word, muscle.title, (), (word, *_facts(facts)))


def _groups(library: Library) -> Iterator[Entry]:
    for word, group in library.groups.items():
        members = ", ".join(group.members)
        facts = (("name", group.title), ("muscles", members), ("declared", _place(library, word)))
        yield Entry("group", word, members, (), (word, *_facts(facts)))


def _equipment(library: Library, movements: list[Movement]) -> Iterator[Entry]:
    for word, (title, handling) in library.equipment.items():
        facts = (
            ("name", title),
            ("load", _LOADS[handling] if handling else None),
            ("declared", _place(library, f"equipment {word}")),
            ("needed by", ", ".join(movement.name for movement in movements if word in movement.needs)),
        )
        yield Entry("equipment", word, title, (), (word, *_facts(facts)))


def _ruleset(declared: Declared) -> Entry:
    lines = _block(declared.span)
    count = sum(line.strip().startswith(("must ", "should ")) for line in lines)
    facts = (f"  declared: {declared.span}", "", *lines)
    return Entry("rule set", declared.name, f"{count} rules", (), (declared.name, *facts))


def _progression(declared: Declared) -> Entry:
    lines = comment_over(declared.span)
    brief = " ".join(line.lstrip("# ") for line in lines).partition(". ")[0].removesuffix(".")
    facts = (f"  declared: {declared.span}", "", *lines, *_block(declared.span))
    return Entry("progression", declared.name, brief, ("progression",), (declared.name, *facts))


def _template(template: Template) -> Entry:
    facts = (f"  {one}" + (f" ({one.kind})" if one.kind else " (to be given)") for one in template.parameters)
    lines = (*comment_over(template.span), *_block(template.span))
    whole = (f"  declared: {template.span}", "  parameters:", *(f"  {fact}" for fact in facts), "", *lines)
    return Entry("template", template.name, template.about, (), (template.name, *whole))


def _block(span: Span) -> tuple[str, ...]:
    """The line of a declaration and the lines indented under it, as written."""
    first, *others = span.source.lines[span.line - 1 :]
    kept = [first]
    for line in others:
        if line.strip() and not line.startswith(" "):
            break
        kept.append(line)
    return tuple("\n".join(kept).rstrip().split("\n"))


def _place(library: Library, word: str) -> str | None:
    return str(library.words[word]) if word in library.words else None


def _facts(facts: tuple[tuple[str, str | None], ...]) -> tuple[str, ...]:
    """A line each, folded where it is long."""
    return tuple(
        line
        for name, value in facts
        if value
        for line in wrap(f"  {name}: {value}", _WIDTH, subsequent_indent="    ", break_on_hyphens=False)
    )
