"""Plans made by hand for the tests of sheets. Nothing comes in; plans with their volume and overview go out."""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction

from setwright.plan import (
    BlockSpan,
    Cause,
    Group,
    GroupKind,
    Handling,
    Line,
    Load,
    Movement,
    Muscle,
    Plan,
    Quantity,
    Segment,
    SegmentKind,
    Session,
    Step,
    Week,
    WeekKind,
)
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    Intensity,
    PercentOfBest,
    Reps,
    RepsKind,
    Rest,
    Tempo,
    Weight,
)
from setwright.quantities import Mass, Unit
from setwright.record import record, replace
from setwright.report.overview import WeekSummary, overview
from setwright.report.volume import Volume, volume
from setwright.source import Source, Span

SPAN = Span(Source("/home/coach/plans/harbour.plan", 'plan "Harbour Winter"\n'), 1, 0, 21)
START = date(2027, 1, 4)

CHEST = Muscle("chest", "Chest")
QUADS = Muscle("quads", "Quadriceps")
LATS = Muscle("lats", "Lats")
TRICEPS = Muscle("triceps", "Triceps")
ABS = Muscle("abs", "Abdominals")
MUSCLES = (CHEST, LATS, QUADS, TRICEPS, ABS)

HALF = Fraction(1, 2)
SQUAT = Movement(
    "Back Squat",
    SPAN,
    "squat",
    ("barbell", "rack"),
    (("quads", Fraction(1)), ("abs", HALF / 2)),
    swaps=("Front Squat",),
    cue="Chest up, knees over the toes, drive the floor away.",
    handling=Handling.BAR,
)
BENCH = Movement(
    "Bench Press",
    SPAN,
    "horizontal-push",
    ("barbell", "bench"),
    (("chest", Fraction(1)), ("triceps", HALF)),
    cue="Shoulder blades together before the bar leaves the rack.",
    handling=Handling.BAR,
)
CHIN_UP = Movement("Chin-Up", SPAN, "vertical-pull", ("pull-up-bar",), (("lats", Fraction(1)),))
LUNGE = Movement(
    "Walking Lunge",
    SPAN,
    "lunge",
    ("dumbbells",),
    (("quads", Fraction(1)),),
    handling=Handling.PAIR,
    swaps=("Step-Up",),
)
PUSHDOWN = Movement(
    "Cable Pushdown", SPAN, "isolation", ("cable",), (("triceps", Fraction(1)),), handling=Handling.STACK
)
PLANK = Movement("Plank", SPAN, "core", (), (("abs", Fraction(1)),), cue="Ribs down, squeeze the floor.")


@record
class Reported:
    """A plan and what is reported of it, as the outputs take them."""

    plan: Plan
    volume: Volume
    overview: tuple[WeekSummary, ...]


def reported(plan: Plan) -> Reported:
    return Reported(plan, volume(plan), overview(plan))


def kg(amount: str | int) -> Mass:
    return Mass(Fraction(amount), Unit.KG)


def count(low: int, high: int | None = None, *, per_side: bool = False) -> Reps:
    return Reps(RepsKind.COUNT, Fraction(low), Fraction(high or low), per_side=per_side)


def rpe(low: str | int, high: str | int | None = None) -> Effort:
    return Effort(Fraction(low), Fraction(low if high is None else high))


def rir(left: int) -> Effort:
    return Effort(Fraction(10 - left), Fraction(10 - left), as_reserve=True)


def work(
    sets: int,
    reps: Reps,
    intensity: Intensity | None = None,
    load: Load | None = None,
    kind: SegmentKind = SegmentKind.WORK,
    steps: tuple[Step, ...] = (),
) -> Segment:
    return Segment(kind, sets, reps, intensity, SPAN, load=load, steps=steps)


def bar(total: str | int, *per_side: str | int) -> Load:
    return Load(kg(total), Handling.BAR, tuple(Fraction(disc) for disc in per_side), kg(20))


def warm_up(*steps: tuple[str | int, int, tuple[str | int, ...]]) -> tuple[Segment, ...]:
    return tuple(
        work(1, count(reps), PercentOfBest(Fraction(50)), bar(total, *discs), SegmentKind.WARM_UP)
        for total, reps, discs in steps
    )


def session(slot: str, offset: int, *lines: Line, label: str | None = None, start: date | None = None) -> Session:
    day = start + timedelta(days=offset) if start else None
    return Session(slot, offset, lines, SPAN, label=label, date=day)


def every_form() -> tuple[Line, ...]:
    """One line of each form that a prescription can take."""
    pair = Group(GroupKind.SUPERSET, "A", Rest(Fraction(90), Fraction(90)))
    ring = Group(GroupKind.CIRCUIT, "B", rounds=3)
    return (
        Line(
            SQUAT,
            (
                *warm_up((20, 8, ()), (40, 5, (10,)), (60, 3, (20,))),
                work(1, count(3), rpe(8), bar("87.5", 25, 5, "2.5", "1.25")),
                work(3, count(5), ChangeByPercent(Fraction(-8)), bar(80, 25, 5)),
            ),
            SPAN,
            rest=Rest(Fraction(180), Fraction(180)),
            advance="advance double-climb(step: 2.5 kg)",
            advance_words="When every set has the repetitions asked for: 2.5 kg more. Otherwise: no change.",
            projected=True,
        ),
        Line(
            BENCH,
            (work(3, count(6, 8), rpe(7, 8), bar(60, 20)),),
            SPAN,
            label="pause",
            rest=Rest(Fraction(120), Fraction(180)),
            tempo=Tempo((3, 1, None, 0)),
            notes=("Pause on the chest from week 2.",),
        ),
        Line(CHIN_UP, (work(3, count(6, 10), Bodyweight(kg(5))),), SPAN, group=pair),
        Line(
            PUSHDOWN,
            (
                work(3, count(12, 15), rir(1)),
                work(2, Reps(RepsKind.MAX), ChangeByPercent(Fraction(-20)), kind=SegmentKind.DROP),
            ),
            SPAN,
            group=pair,
        ),
        Line(
            LUNGE,
            (work(3, count(8, per_side=True), rir(2), Load(kg("17.5"), Handling.PAIR)),),
            SPAN,
            group=ring,
            optional=True,
        ),
        Line(
            PLANK, (work(3, Reps(RepsKind.SECONDS, Fraction(40), Fraction(40))),), SPAN, group=ring, swaps=("Dead Bug",)
        ),
        Line(
            SQUAT,
            (work(4, Reps(RepsKind.CLUSTER, parts=(2, 2, 2)), PercentOfBest(Fraction(85))),),
            SPAN,
            label="cluster",
            pause=Fraction(20),
            every=Fraction(180),
        ),
        Line(
            BENCH,
            (
                work(1, Reps(RepsKind.AT_LEAST, Fraction(5), Fraction(5)), Weight(kg(70)), kind=SegmentKind.TEST),
                work(1, count(5), ChangeByMass(kg(-5))),
            ),
            SPAN,
            label="last",
        ),
        Line(PLANK, (work(2, Reps(RepsKind.METRES, Fraction(30), Fraction(30))),), SPAN, label="crawl"),
    )


def small() -> Plan:
    """Three weeks, working, deload and test, with dates and an athlete: every form on the first day."""
    limited = work(
        2,
        count(5),
        rpe(6),
        bar(60, 20),
        steps=(
            Step(Quantity.SETS, Cause.DELOAD, 3, 2, SPAN, (("share", Fraction(1, 2)),)),
            Step(
                Quantity.INTENSITY,
                Cause.LIMIT,
                Effort(Fraction(8), Fraction(8)),
                Effort(Fraction(6), Fraction(6)),
                SPAN,
            ),
        ),
    )
    tried = work(
        1, Reps(RepsKind.MAX), PercentOfBest(Fraction(85), "Back Squat"), bar(85, 25, 5, "2.5"), SegmentKind.TEST
    )
    weeks = (
        Week(
            1,
            "Settle",
            1,
            WeekKind.WORKING,
            (
                session("Mon", 0, *every_form(), label="Squat lead", start=START),
                session("Thu", 3, Line(BENCH, (work(3, count(5), rpe(7), bar(55, 15, "2.5")),), SPAN), start=START),
            ),
            SPAN,
            START,
            notes=("Learn the movements; leave the bar light.",),
        ),
        Week(
            2,
            "Settle",
            2,
            WeekKind.DELOAD,
            (session("Mon", 0, Line(SQUAT, (limited,), SPAN), label="Squat lead", start=START + timedelta(7)),),
            SPAN,
            START + timedelta(7),
        ),
        Week(
            3,
            "Measure",
            1,
            WeekKind.TEST,
            (session("Mon", 0, Line(SQUAT, (tried,), SPAN), label="Test", start=START + timedelta(14)),),
            SPAN,
            START + timedelta(14),
        ),
    )
    return Plan(
        "Harbour Winter",
        SPAN,
        Unit.KG,
        weeks,
        (BlockSpan("Settle", 1, 2, SPAN), BlockSpan("Measure", 3, 3, SPAN)),
        MUSCLES,
        (),
        author="Harbour Lifting Room",
        start=START,
        athlete="Mirela",
        athlete_facts=(("Back Squat best", "100 kg (tested)"), ("Bodyweight", "64 kg")),
        notes=("Three short weeks to learn the lifts and try them.",),
    )


def long(weeks: int, days: int = 5, lines: int = 6) -> Plan:
    """So many weeks of so many days of so many lines each, four weeks a block, the fourth a deload."""
    slots = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
    forms = every_form()
    made = []
    for number in range(1, weeks + 1):
        start = START + timedelta(7 * (number - 1))
        day = [
            session(slots[at], at, *(forms[(at + i) % len(forms)] for i in range(lines)), label="Upper", start=start)
            for at in range(days)
        ]
        kind = WeekKind.DELOAD if number % 4 == 0 else WeekKind.WORKING
        made.append(Week(number, f"Block {(number + 3) // 4}", (number - 1) % 4 + 1, kind, tuple(day), SPAN, start))
    blocks = tuple(
        BlockSpan(f"Block {at + 1}", 4 * at + 1, min(4 * at + 4, weeks), SPAN) for at in range((weeks + 3) // 4)
    )
    return replace(small(), name="Harbour Year", weeks=tuple(made), blocks=blocks)


def hostile() -> Plan:
    """Texts that try to be formulas, markup, table cells, scripts; long and right-to-left names."""
    evil = '<script>alert("x")</script>'
    bench = replace(BENCH, name=f"=1+2|{evil}", cue=f"*bold* [link](javascript:x) {evil}\n| a | b |")
    squat = replace(SQUAT, name="Donaudampfschifffahrtskniebeuge" * 3, swaps=("-1+1", "@sum", "</td>"))
    hebrew = replace(PLANK, name="\u05e4\u05dc\u05d0\u05e0\u05e7 (\u05e6\u05d3)", cue=None)
    lines = (
        Line(bench, (work(1, count(5)),), SPAN, label="+cmd", notes=("=HYPERLINK(1)", 'say "hi", then\r\nrest')),
        Line(squat, (work(1, count(5)),), SPAN, notes=("# head", "1. item", "https://example.org", "--- `code` $x$")),
        Line(hebrew, (work(1, count(5)),), SPAN, label="@x"),
    )
    day = Session("Mon", 0, lines, SPAN, label="-2 days", notes=(evil,))
    week = Week(1, f'@Block"{evil}', 1, WeekKind.WORKING, (day,), SPAN, notes=("\t=tab",))
    return replace(
        small(),
        name=f"{evil} & co",
        author="\u05d9\u05e2\u05dc <b>",
        athlete="</title>",
        start=None,
        athlete_facts=((evil, "| x |"),),
        weeks=(week,),
        blocks=(BlockSpan(week.block, 1, 1, SPAN),),
        notes=("> quote",),
    )
