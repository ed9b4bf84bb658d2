"""`away` and `ease-in` lines, typed and checked.

Comes in: their nodes. Goes out: `Away`s in order, none over another, and an `EaseIn`, or what is wrong with them.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import weeks as codes
from setwright.link.blocks import linked_deload
from setwright.link.values import whole
from setwright.log.model import Away, Missed
from setwright.plan import EaseIn
from setwright.syntax import nodes as n

Problems = list[Diagnostic]

LONGEST_GAP = 365  # days after which easing in may be asked for


def linked_aways(lines: Iterable[n.AwayLine], problems: Problems) -> tuple[Away, ...]:
    """The days away of one athlete by date. Of two that overlap the later one is reported and left out."""
    made = [away for line in lines if (away := _away(line, problems)) is not None]
    kept: list[Away] = []
    for away in sorted(made, key=lambda one: (one.first, one.last)):
        before = kept[-1] if kept else None
        if before is not None and away.first <= before.last:
            related = (Related(before.span, "these days are taken here"),)
            problems.append(codes.AWAY_TWICE.at(away.span, date=away.first.isoformat(), related=related))
        else:
            kept.append(away)
    return tuple(kept)


def linked_ease_in(node: n.EaseInLine, problems: Problems) -> EaseIn | None:
    """After how many days without a session what is asked is lightened, and by how much."""
    days = whole(node.days, problems, "a number of days (`14`)", LONGEST_GAP)
    scaled = linked_deload(node.scalings, node, problems)
    return EaseIn(days, scaled.sets, scaled.load, scaled.effort, node.span) if days is not None else None


def _away(line: n.AwayLine, problems: Problems) -> Away | None:
    if line.first is None or line.last is None:
        return None
    if line.last < line.first:
        problems.append(codes.AWAY_REVERSED.at(line.span, first=line.first.isoformat(), last=line.last.isoformat()))
        return None
    return Away(line.first, line.last, Missed.SHIFT if line.shifts else Missed.SKIP, line.span, line.reason)
