"""What the script of the sheet needs to record sessions, as one block of JSON, and the script itself.

Comes in: a plan and a language. Goes out: text that can stand inside `<script>`. The block holds, as short as it can:

- `plan`, `athlete`, `unit`, and `decimal`, the decimal sign of the language
- `words`: what the script says, by a name for each
- `models`: for each model used, what to multiply a load by for the best at 1, 1.5, ... 10 repetitions to failure
- `movements`: name, the model's name, 1 where a load is that of one hand
- `sets`: sets, load, 1 where it hangs on bodyweight, unit, repetitions low and high, their kind, 1 for each side,
  effort, its scale, 1 where a drop set; and `rests`: seconds low and high, 1 where a set starts each so many seconds
- `sessions`: key, date, day, week, and lines: a movement's place, label, a rest's place, the places of its sets, group
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any, Final

from markupsafe import Markup

from setwright.check.figures.effort import is_scaled
from setwright.plan import Handling, Line, Movement, Plan, Segment, SegmentKind, Session, Week
from setwright.prescription import Bodyweight, ChangeByMass, ChangeByPercent, Effort, Reps, RepsKind, Rest
from setwright.quantities import plain
from setwright.render import words
from setwright.render.html.recording_words import spoken
from setwright.render.language import Language
from setwright.science.repetitions import RELIABLE_REPS, Model, share_of_best

# One closure, in this order; the last starts it.
SCRIPTS: Final = (
    *("basics", "sets", "lines", "reading", "table", "book", "bringing", "rest", "page", "row", "session", "records"),
    "start",
)

_HALF_STEPS: Final = tuple(Fraction(half, 2) for half in range(2, int(RELIABLE_REPS) * 2 + 1))
_KINDS: Final = {RepsKind.SECONDS: "s", RepsKind.METRES: "m", RepsKind.CLUSTER: "+", RepsKind.MAX: "max"}


def block(plan: Plan, language: Language) -> Markup:
    """The data as JSON in which no text can close the element around it or open another."""
    text = json.dumps(data(plan, language), ensure_ascii=False, separators=(",", ":"))
    # `<` opens tags and comments; the two separators end lines where JSON is read as script.
    for character in "<>\u2028\u2029":
        text = text.replace(character, f"\\u{ord(character):04x}")
    return Markup(text)


@cache
def script(names: tuple[str, ...] = SCRIPTS) -> Markup:
    """The files of `record/` as one closure, without the comments and the indentation that only readers need."""
    folder = files(__package__).joinpath("record")
    text = "\n".join(folder.joinpath(f"{name}.js").read_text(encoding="utf-8") for name in names)
    kept = (line for line in map(str.strip, text.splitlines()) if line and not line.startswith("//"))
    return Markup('(() => {\n"use strict";\n' + "\n".join(kept) + "\n})();")


def key_of(session: Session, week: Week) -> str:
    """What a record is kept under: the date, or `w3-Mon` in a plan without dates."""
    return session.date.isoformat() if session.date else f"w{week.number}-{session.slot}"


def data(plan: Plan, language: Language) -> dict[str, Any]:
    """The content of the block."""
    return _Data(plan, language).made()


class _Data:
    """Collects what occurs again and again into tables, so that a line needs only places in them."""

    def __init__(self, plan: Plan, language: Language) -> None:
        self._plan = plan
        self._language = language
        self._movements: dict[tuple[Any, ...], int] = {}
        self._sets: dict[tuple[Any, ...], int] = {}
        self._rests: dict[tuple[Any, ...], int] = {}

    def made(self) -> dict[str, Any]:
        sessions = [self._session(session, week) for week in self._plan.weeks for session in week.sessions]
        models = sorted({model for _, model, _ in self._movements})
        return {
            "plan": self._plan.name,
            "athlete": self._plan.athlete or "",
            "unit": self._plan.unit.value,
            "decimal": self._language.number(Fraction(1, 2))[1],
            "words": spoken(self._language),
            "models": {model: _factors(Model(model)) for model in models},
            "movements": [list(movement) for movement in self._movements],
            "sets": [list(one) for one in self._sets],
            "rests": [list(rest) for rest in self._rests],
            "sessions": sessions,
        }

    def _session(self, session: Session, week: Week) -> list[Any]:
        lines = [self._line(line) for line in session.lines]
        date = session.date.isoformat() if session.date else ""
        return [key_of(session, week), date, session.slot, week.number, lines]

    def _line(self, line: Line) -> list[Any]:
        movement = self._place(self._movements, _movement(line, self._plan))
        rest = _rest(line)
        resting = self._place(self._rests, rest) if rest is not None else -1
        sets = [self._place(self._sets, _alike(line.movement, *hung)) for hung in _hung(line)]
        group = [line.group.letter] if line.group else []
        return [movement, line.label or "", resting, sets, *group]

    @staticmethod
    def _place(table: dict[tuple[Any, ...], int], value: tuple[Any, ...]) -> int:
        return table.setdefault(value, len(table))


def _factors(model: Model) -> list[float]:
    """What a load is multiplied by, to five decimals: less than a gram in 100 kg."""
    return [round(float(1 / share_of_best(model, reps)), 5) for reps in _HALF_STEPS]


def _movement(line: Line, plan: Plan) -> tuple[str, str, int]:
    model = line.movement.model or plan.model or Model.EPLEY.value
    return line.movement.name, model, int(line.movement.handling is Handling.PAIR)


def _rest(line: Line) -> tuple[int, int, int] | None:
    if line.every is not None:
        return _whole(line.every), _whole(line.every), 1
    rest: Rest | None = line.rest or (line.group.rest if line.group else None)
    return (_whole(rest.low), _whole(rest.high), 0) if rest else None


def _whole(seconds: Fraction) -> int:
    return (2 * seconds.numerator + seconds.denominator) // (2 * seconds.denominator)


def _hung(line: Line) -> Iterator[tuple[Segment, bool]]:
    """The work segments, each with whether its load hangs on bodyweight: what is changed after `then` still does."""
    on_body = False
    for segment in line.work:
        changes = isinstance(segment.intensity, ChangeByPercent | ChangeByMass)
        on_body = on_body if changes else isinstance(segment.intensity, Bodyweight)
        yield segment, on_body


def _alike(movement: Movement, segment: Segment, on_body: bool) -> tuple[Any, ...]:
    """Sets that are alike, with what a set that went as written is recorded as: ranges at their top, as for loads."""
    load, hangs, unit = _load(movement, segment, on_body)
    low, high, kind = _amount(segment.reps)
    effort, scale = _effort(segment)
    is_drop = int(segment.kind is SegmentKind.DROP)
    return (segment.sets, load, hangs, unit, low, high, kind, int(segment.reps.per_side), effort, scale, is_drop)


def _load(movement: Movement, segment: Segment, on_body: bool) -> tuple[str, int, str]:
    """The load as text, whether it is added to bodyweight, its unit; no unit where a load makes no sense."""
    if on_body:
        added = segment.load.mass if segment.load else getattr(segment.intensity, "added", None)
        return (plain(added.amount, 3), 1, added.unit.value) if added and added.amount else ("", 1, "")
    mass = words.known_mass(segment)
    if mass is not None:
        return plain(mass.amount, 3), 0, mass.unit.value
    held = segment.reps.kind in (RepsKind.SECONDS, RepsKind.METRES)
    return "", 0, "-" if held and movement.handling is None else ""


def _amount(reps: Reps) -> tuple[str, str, str]:
    if reps.kind is RepsKind.CLUSTER:
        parts = "+".join(str(part) for part in reps.parts)
        return parts, parts, "+"
    if reps.kind is RepsKind.MAX:
        return "", "", "max"
    return plain(reps.low, 3), plain(reps.high, 3), _KINDS.get(reps.kind, "")


def _effort(segment: Segment) -> tuple[str, str]:
    """The effort at the top of its range, and the scale it was written in; RPE where none is stated.

    Nobody knows how hard a set is whose load a deload scaled: the athlete says.
    """
    intensity = segment.intensity
    if not isinstance(intensity, Effort):
        return "", "RPE"
    if is_scaled(segment):
        return "", "RIR" if intensity.as_reserve else "RPE"
    return (plain(10 - intensity.high), "RIR") if intensity.as_reserve else (plain(intensity.high), "RPE")
