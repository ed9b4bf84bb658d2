"""What lines became, said shortly: a segment with its load, a line week by week, a session's sets for each muscle.

Comes in: the expanded plan. Goes out: text in the words of the sheets.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setwright.check.figures.sets import Ledger, Subject, total
from setwright.pipeline import Compilation
from setwright.plan import Line, Movement, Segment, Session, Week, WeekKind
from setwright.quantities import plain
from setwright.render import words
from setwright.render.language import ENGLISH


def segment_text(segment: Segment) -> str:
    """`4 x 5 @ 80%, 100 kg`, as sheets say it."""
    effort, load = words.asked_effort(segment, ENGLISH), words.load(segment, ENGLISH)
    said = f"{words.dose(segment, ENGLISH)} @ {effort}" if effort else words.dose(segment, ENGLISH)
    return f"{said}, {load}" if load else said


def line_text(line: Line) -> str:
    """The work of a line, without its warm-up."""
    return " then ".join(segment_text(segment) for segment in line.work)


def week_text(week: Week) -> str:
    """`3`, with what the week is for where it is not like the others."""
    return str(week.number) if week.kind is WeekKind.WORKING else f"{week.number} ({week.kind.value})"


def trains(movement: Movement) -> str:
    """The muscles of a movement with the share of a set that each is credited, the greatest first."""
    works = sorted(movement.works, key=lambda pair: -pair[1])
    return ", ".join(word if share == 1 else f"{word} {plain(share)}" for word, share in works)


def session_sets(made: Compilation, week: Week, session: Session) -> list[tuple[str, Fraction]]:
    """The sets of one session for each muscle, the most first, counted as the plan counts."""
    ledger = Ledger(made.plan, made.promise).of((week,))
    days = [day for _, found in ledger.weeks for day in found if day.session is session]
    sets = (
        (muscle.word, sum((total(ledger.parts(day, _subject(muscle.word))) for day in days), Fraction(0)))
        for muscle in made.plan.muscles
    )
    return sorted(((word, number) for word, number in sets if number), key=lambda pair: -pair[1])


def _subject(word: str) -> Subject:
    return Subject(word, word, (word,))


def runs(texts: Iterable[tuple[int, str]]) -> list[str]:
    """What follows each other and is the same, once: `1-3: 4 x 5`, `4: 2 x 5`."""
    found: list[tuple[int, int, str]] = []
    for number, text in texts:
        if found and found[-1][2] == text and found[-1][1] == number - 1:
            found[-1] = (found[-1][0], number, text)
        else:
            found.append((number, number, text))
    return [f"{first}: {text}" if first == last else f"{first}-{last}: {text}" for first, last, text in found]
