"""A log: sessions that were done, and days away. Frozen data only.

`link` makes it from files; an athlete has one log, however many files it is written in.
"""

from __future__ import annotations

from datetime import date
from enum import Enum
from fractions import Fraction

from setwright.plan import Movement
from setwright.prescription import Bodyweight, Effort, Reps, Weight
from setwright.record import record
from setwright.source import Span

Load = Weight | Bodyweight


@record
class SetDone:
    """One set as it was done: `load` None where none was written down, `reps` an exact number (0 for a missed one).

    `effort` is None where it was not written down.
    """

    load: Load | None
    reps: Reps
    effort: Effort | None = None


@record
class LineDone:
    """The sets of one movement as one entry of a session writes them; a session may hold several of one movement."""

    movement: Movement
    label: str | None
    sets: tuple[SetDone, ...]
    span: Span
    is_test: bool = False  # it says so itself


@record
class SessionDone:
    """One day's training. `week` and `slot` where the entry says which session of the plan it was.

    `effort` is of the whole session, from 0 to 10, another scale than that of sets; `minutes` is how long it took.
    """

    day: date
    lines: tuple[LineDone, ...]
    span: Span
    week: int | None = None
    slot: str | None = None
    notes: tuple[str, ...] = ()
    effort: Fraction | None = None
    minutes: Fraction | None = None


class Missed(Enum):
    """What becomes of the plan where an athlete was away."""

    SHIFT = "shift"  # it goes on where it stopped
    SKIP = "skip"  # it does not wait


@record
class Away:
    """Days without training, the last one among them."""

    first: date
    last: date
    missed: Missed
    span: Span
    reason: str | None = None


@record
class Log:
    """All that is known of one athlete's training: sessions by day (of one day in the order written), and days away."""

    sessions: tuple[SessionDone, ...] = ()
    aways: tuple[Away, ...] = ()
