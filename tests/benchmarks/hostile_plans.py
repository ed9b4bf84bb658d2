"""Makes plans that nobody would write, and that the compiler has to answer all the same.

Comes in: a random generator. Goes out: the text of one file, mostly readable and often extreme.
"""

from __future__ import annotations

from random import Random

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
SHIPPED = ("Back Squat", "Bench Press", "Deadlift", "Pull-Up", "Dip", "Goblet Squat", "Farmer's Carry", "Lateral Raise")
OWN = ("Pier Lift", "Quay Pull", "Øre Press", '"掛け声"', '"e\u0301ve"', '"9 bells"')
MUSCLES = ("quads", "chest", "lats", "glutes", "triceps", "hamstrings", "calves", "biceps")
MODELS = ("epley", "brzycki", "lander", "lombardi", "mayhew", "oconner", "wathan", "table", "mean")
MEASURES = (
    *("weekly-sets 4-12", "session-sets <= 6", "frequency >= 2", "recovery >= 48 h after 6 sets", "effort <= RPE 8"),
    *(
        "intensity <= 90%",
        "weekly-rise <= 20%",
        "deload-cut >= 40%",
        "session-time <= 60 min",
        "weekly-time <= 300 min",
    ),
    *("monotony <= 2", "strain <= 4000", "lifts-in-zone 0-100%", "balance chest : lats 0.5-2", "weekly-sets <= 0"),
)
PROGRESSIONS = (
    *("load-each-exposure", "double-climb", "two-over-in-two", "sets-then-load", "effort-steps", "effort-waves"),
    *("percent-steps", "percent-waves", "top-in-every-set", "own-steps"),
)
TRICKY = (
    *("\u202e", "\u200b", "\u0301", "\ufeff", "\u2028", "\x85", "\x0c", "\x00", "\u00a0", "İ", "ı", "ſ", "ß", "ﬁ", "Ǆ"),
    *(
        "٣",
        "²",
        "½",
        "𝟘",
        "一",
        "👩‍🚒",
        "\ud800",
        "−",
        "–",
        "×",
        "→",
        "…",
        "≤",
        "“",
        "'",
        "\\",
        "<b>",
        "=1+1",
        "|",
        "\t",
    ),
)


class Maker:
    """One file's text; `extreme` says how often a number comes from the edge of what may be written."""

    def __init__(self, random: Random) -> None:
        self.random = random
        self.extreme = random.choice((0.0, 0.0, 0.02, 0.2))
        self.loose = random.choice((0.0, 0.0, 0.02, 0.3))  # how often a line has no regard for what stands around it
        self.movements = [*SHIPPED, *OWN]
        self.microcycle = 0
        self.weeks = 4  # of the block being written
        self.moves = True  # may a number move over the weeks here?
        self.has_template = False

    def file(self) -> str:
        """Imports, a library of its own, a template, plans and athletes."""
        parts = ["use stdlib.exercises", "use stdlib.rules.strength-newer", *self.library()]
        self.has_template = self.chance(0.3)
        if self.has_template:
            parts += self.template()
        for number in range(self.random.choice((1, 1, 1, 2))):
            parts += self.plan(f"Pier {number}")
        for number in range(self.random.choice((0, 1, 1, 2))):
            parts += self.athlete(f"Ada {number}")
        return "\n".join(self.tricked(line) for line in parts) + "\n"

    # ---- choices -------------------------------------------------------------------------------

    def chance(self, share: float) -> bool:
        return self.random.random() < share

    def number(self, low: int, high: int, *edges: str) -> str:
        """A usual number, or now and then one of the edges."""
        if self.chance(self.extreme):
            return self.random.choice((*edges, "0", "1", "0.001", "999999999999", "1000000000000", "0.0000000001"))
        return str(self.random.randint(low, high))

    def loosely(self) -> bool:
        return self.chance(self.loose)

    def tricked(self, line: str) -> str:
        if not self.chance(self.extreme / 20):
            return line
        at = self.random.randint(0, len(line))
        return line[:at] + self.random.choice(TRICKY) * self.random.choice((1, 1, 3, 500)) + line[at:]

    def movement(self) -> str:
        return self.random.choice(self.movements)

    def some(self, of: tuple[str, ...], most: int = 3) -> list[str]:
        return self.random.sample(of, self.random.randint(1, min(most, len(of))))

    # ---- a library -----------------------------------------------------------------------------

    def library(self) -> list[str]:
        lines = ["equipment crane", f"  loads {self.random.choice(('bar', 'other-bar', 'pair', 'one', 'stack'))}"]
        for name in OWN:
            like = (
                f" like {self.movement() if self.loosely() else self.random.choice(SHIPPED)}"
                if self.chance(0.4)
                else ""
            )
            lines += [f"exercise {name}{like}", f"  works {', '.join(f'{m} 1' for m in self.some(MUSCLES))}"]
            if self.chance(0.5):
                lines.append(f"  needs {self.random.choice(('crane', 'barbell', 'dumbbells', 'bench'))}")
            if self.chance(0.4):
                lines.append(
                    f"  best from {self.movement() if self.loosely() else self.random.choice(SHIPPED)} {self.number(50, 150, '150', '0.5')}%"
                )
            if self.chance(0.4):
                lines.append(f"  swap for {', '.join(self.some(tuple(self.movements), 5))}")
            if self.chance(0.2):
                lines.append(f"  model {self.random.choice(MODELS)}")
        for number in range(self.random.choice((0, 0, 0, 30, 300)) if self.chance(self.extreme) else 0):
            lines.append(f"muscle m{number}")
        lines += ['exercise "Extra"', *(f'exercise "Lift {number}"' for number in range(3))]
        lines += ["progression own-steps(step = 2.5 kg, many = 2)"]
        for _ in range(self.random.randint(0, 4)):
            lines.append(f"  when {self.condition()}{self.running()}: {', '.join(self.actions())}")
        return [*lines, f"  otherwise: {', '.join(self.actions())}", *self.rules("house")]

    def condition(self) -> str:
        if self.chance(0.2):
            return f"effort {self.compare()} {self.random.choice(('target', 'target + 1', 'RPE 9'))}"
        what = self.random.choice(("top", "bottom", "target", "target + 1", "target - 1", "many", self.number(1, 12)))
        return f"{self.random.choice(('all', 'any', 'last'))} sets {self.compare()} {what}"

    def compare(self) -> str:
        return self.random.choice(("<", "<=", ">", ">=", "="))

    def running(self) -> str:
        return self.random.choice(("", "", f" {self.number(1, 4, '100')} times running"))

    def actions(self) -> list[str]:
        by = (f"load + {self.number(1, 10, '1000')} kg", f"load - {self.number(1, 20, '100', '150')}%", "load + step")
        sets = (
            f"sets + {self.number(1, 3, '100')}",
            f"sets = {self.number(1, 9, '100')}",
            f"reps = {self.number(1, 9)}",
        )
        reps = (f"reps + {self.number(1, 3, '1000')}", f"reps - {self.number(1, 3, '1000')}", "reps = bottom")
        effort = (
            (f"effort + {self.number(1, 2, '0.5', '0.01')}", "effort = RPE 7", "effort - 1")
            if self.loosely()
            else ("hold", "hold")
        )
        if self.chance(0.15):
            return ["hold"]
        return [
            self.random.choice(self.random.choice((by, sets, reps, effort))) for _ in range(self.random.randint(1, 3))
        ]

    def rules(self, name: str) -> list[str]:
        return [f"rules {name}", *(f"  {self.rule()}" for _ in range(self.random.randint(1, 12))), *self.counts("  ")]

    def rule(self) -> str:
        severity = "must" if self.chance(0.02 + self.loose) else "should"
        measure, _, bound = self.random.choice(MEASURES).partition(" ")
        whom = self.random.choice(("", " for every muscle", f" for {', '.join(self.some(MUSCLES))}"))
        whom = "" if measure in ("balance", "session-time", "weekly-time", "monotony", "strain") else whom
        where = self.random.choice(("", "", " in every week", " in weeks 1-2", f" in week {self.number(1, 9, '520')}"))
        reason = self.random.choice(("", ' "The tide."', ' "' + "x" * 1500 + '"' if self.chance(self.extreme) else ""))
        return f"{severity} {measure}{whom} {bound}{where}{reason}"

    def counts(self, indent: str) -> list[str]:
        kinds = ("count fractional", "count direct", "count total", "count from RPE 6", "count required")
        return [indent + self.random.choice(kinds)] if self.chance(0.3) else []

    # ---- plans ---------------------------------------------------------------------------------

    def template(self) -> list[str]:
        head = (
            "template pier-days(lift = Back Squat, span = 4, many = 3, some-reps = 6-8, top = RPE 9, pause-time = 90 s)"
        )
        line = "      lift: many x some-reps @ RPE 7 -> top, rest pause-time, warm-up 50% x 5"
        return [head, *self.body("  "), "  block Shape: span weeks", "    day Mon", line]

    def plan(self, name: str) -> list[str]:
        made = ""
        if self.loosely() or (self.has_template and self.chance(0.5)):
            given = (
                f"lift: {self.movement()}",
                f"span: {self.number(1, 9, '104', '105')}",
                f"many: {self.number(1, 9, '100')}",
            )
            more = (f"top: RPE {self.number(5, 10, '10', '0.5')}", "some-reps: 1000", "pause-time: 6 h")
            more = (*more, "some-reps: 3-1") if self.loosely() else more
            made = f" from pier-days({', '.join(self.some((*given, *more)))})"
        lines = [f'plan "{name}"{made}', *self.settings("  ", bool(made)), *self.body("  ", 20 if made else 0)]
        if made and self.chance(0.5):
            lines += ["  block Shape", "    day Mon", '      add "Lift 0": 3 x 5']
        return lines

    def settings(self, indent: str, made: bool) -> list[str]:
        dates = ("2027-01-04", "0001-01-01", "9999-12-31", "9999-12-20", "2024-02-29", "0000-01-01", "2027-02-30")
        length = self.number(1, 14, "60", "61", "1")
        self.microcycle = int(length) if self.chance(0.2) and length.isdigit() and not made else 0
        could = (
            f"start {self.random.choice(dates) if self.chance(0.1 + self.extreme) else dates[0]}",
            f"model {self.random.choice(MODELS)}",
            f"round {self.random.choice(('nearest', 'down'))}",
            f"units {self.random.choice(('kg', 'lb'))}",
            f"follow {self.random.choice(('house', 'strength-newer', 'house, strength-newer'))}",
            f"deload every {self.number(2, 6, '520', '1')} weeks: {self.scaling()}",
            'author "Pier Club"',
        )
        lines = [*self.some(could, 5), f"warm-up {self.warm_ups()}"]
        lines += [self.rule() for _ in range(self.random.choice((0, 1, 5)))]
        lines += [self.emphasis() for _ in range(self.random.choice((0, 0, 1, 4)))]
        if self.chance(0.2):
            lines.append(f'waive {self.random.choice(MEASURES).partition(" ")[0]} "Travel."')
        if self.microcycle:
            lines.append(f"microcycle {length} days")
        return [indent + line for line in lines]

    def emphasis(self) -> str:
        return (
            f"emphasis {self.random.choice(MUSCLES)} {self.random.choice('+-')}{self.number(1, 6, '20')} sets per week"
        )

    def scaling(self) -> str:
        parts = (f"sets {self.number(30, 80, '100', '0.5')}%", f"load {self.number(60, 95, '100')}%", "effort RPE 6")
        return ", ".join(self.some(parts))

    def warm_ups(self) -> str:
        count = self.random.randint(1, 60 if self.chance(self.extreme) else 4)
        return ", ".join(f"{self.number(30, 90, '100', '150')}% x {self.number(1, 9, '1000')}" for _ in range(count))

    def body(self, indent: str, first: int = 0) -> list[str]:
        lines: list[str] = []
        count = self.random.randint(1, 60 if self.chance(self.extreme) else 4)
        for number in range(first, first + count):
            before = self.random.randint(first, number if self.loosely() else max(first, number - 1))
            like = f" like Phase {before}" if number > first and self.chance(0.5) else ""
            weeks = self.number(1, 6, "104", "52", "104", "0")
            self.weeks = int(weeks) if weeks.isdigit() and int(weeks) < 105 else 4
            self.movements = [name for name in self.movements if not name.startswith('"Lift')]
            lines.append(f"{indent}block Phase {number}: {weeks} week{'s' * (weeks != '1')}{like}")
            lines += [f"{indent}  {line}" for line in self.block(bool(like))]
        return lines

    def block(self, inherited: bool) -> list[str]:
        lines = []
        if self.weeks > 2 and self.chance(0.3):
            lines.append(f"deload week {self.number(2, 9 if self.loosely() else self.weeks)}: {self.scaling()}")
        if self.chance(0.2):
            lines.append(f"limit effort RPE {self.number(5, 10, '10', '1')}")
        if inherited and not self.loosely():
            return lines
        slots = tuple(str(day) for day in range(1, min(self.microcycle, 60) + 1)) if self.microcycle else DAYS
        chosen = self.some(slots, 7)
        for number, slot in enumerate(chosen):
            like = (
                f" like {self.random.choice(chosen if self.loosely() else chosen[:number])}"
                if number and self.chance(0.25)
                else ""
            )
            lines.append(f"day {slot}{like}")
            lines += [f"  {line}" for line in self.day(bool(like))]
        return lines

    def day(self, edited: bool) -> list[str]:
        if edited:
            edits = (f"drop {self.movement()}", f"swap {self.movement()} for {self.movement()}", f"add {self.line()}")
            return self.some(edits) if self.loosely() else ['add "Extra": 3 x 5'] if self.chance(0.2) else []
        if self.chance(self.extreme):
            self.movements += [f'"Lift {number}"' for number in range(3)]
        lines: list[str] = []
        for movement in self.some(tuple(dict.fromkeys(self.movements)), 8):
            if self.chance(0.15):
                group = self.random.choice(
                    ("superset", "superset rest 60 s", f"circuit {self.number(1, 5, '100')} rounds")
                )
                lines += [group, f"  {movement}: {self.reps() if group[0] == 'c' else self.prescription()}"]
                lines += [f"  {self.line()}"] if self.loosely() else []
            elif self.chance(0.01 + self.loose):
                self.moves = False
                lines += [
                    f"{movement}:",
                    *(f"  week {week}: {self.prescription()}" for week in range(1, self.weeks + 1)),
                ]
                self.moves = True
            else:
                lines += [f"{movement}: {self.prescription()}"]
                lines += self.under() if self.chance(0.2) else []
        return lines

    def line(self) -> str:
        return f"{self.movement()}: {self.prescription()}"

    def under(self) -> list[str]:
        could = (f'note "{"n" * self.random.choice((1, 9, 1900))}"', f"swap for {self.movement()}", "optional")
        return [f"  {line}" for line in self.some(could[: 2 + self.loosely()])]

    # ---- prescriptions -------------------------------------------------------------------------

    def prescription(self) -> str:
        if self.moves and self.chance(0.15):
            return self.progressing()
        text = self.segment(first=True)
        for _ in range(40 if self.chance(self.extreme) else self.random.choice((0, 0, 0, 1, 2))):
            text += self.random.choice((" then ", " then drop ")) + self.segment(first=False)
        modifiers = [f"rest {self.track(60, 200, ' s')}", "tempo 3-1-X-0", f"warm-up {self.warm_ups()}"]
        modifiers += ["test", "optional", f"every {self.number(30, 200, '21600')} s", f"limit RPE {self.number(6, 10)}"]
        if self.loosely():
            modifiers += ["pause 20 s", "tempo 99-99-99-99", "warm-up", f"advance {self.random.choice(PROGRESSIONS)}"]
        return ", ".join([text, *(self.some(tuple(modifiers)) if self.chance(0.5) else ())])

    def progressing(self) -> str:
        """A line that a progression moves, mostly by a step that fits it."""
        self.moves = False
        kg, percent = self.number(1, 300, "1000", "0.5"), self.number(40, 100, "150", "0.5")
        mass, points = f"step: {self.number(1, 20, '1000', '2205')} kg", f"step: {self.number(1, 10, '100', '0.5')}%"
        sets = self.number(1, 5, "100")
        lines = (
            f"{sets} x 6-8 @ {kg} kg, advance double-climb({mass})",
            f"{sets} x 5 @ bodyweight + {kg} kg, advance load-each-exposure({mass})",
            f"{sets} x 1-1000 @ {kg} kg, advance top-in-every-set({points})",
            f"{sets} x 5 @ {kg} kg, advance sets-then-load({mass}, climb: {self.number(1, 3, '99')})",
            f"{sets} x 5 @ RPE 7, advance effort-steps(rise: {self.number(1, 2, '9')})",
            f"{sets} x 5 @ RPE 7, advance effort-waves",
            f"{sets} x 5 @ {percent}%, advance percent-steps({points})",
            f"{sets} x 8 @ {percent}%, advance percent-waves({points})",
            f"{sets} x {self.number(1, 12, '1000')} @ {kg} kg, advance own-steps({mass})",
        )
        line = self.random.choice(lines)
        self.moves = True
        return line + self.argument() if self.loosely() else line

    def argument(self) -> str:
        step = self.random.choice(("1000 kg", "0.000001 kg", "150%", "0.5%", "2205 lb", "2.5 kg"))
        return f"({self.random.choice(('step', 'back', 'rise'))}: {step})"

    def segment(self, first: bool) -> str:
        return f"{self.track(1, 6, '', '100')} x {self.reps()}{self.intensity(first)}"

    def reps(self) -> str:
        cluster = "(" + "+".join(["2"] * self.random.choice((2, 3, 3, 900 if self.chance(self.extreme) else 4))) + ")"
        times = (
            f"{self.number(5, 60, '21600')} s",
            f"{self.number(5, 60, '50000')} m",
            "360 min",
            "max",
            "5+",
            "6-8",
            cluster,
        )
        counted = self.track(1, 12, "", "1000")
        side = "/side" if self.chance(0.2) and ("+" not in counted or self.loosely()) else ""
        return self.random.choice((counted, counted, *times)) + side

    def intensity(self, first: bool) -> str:
        could = (
            *("", f" @ RPE {self.track(5, 10, '', '10', '1', '9.5')}", f" @ {self.track(50, 100, '%', '150', '0.5')}"),
            *(f" @ {self.track(20, 200, ' kg', '1000', '0.5')}", f" @ {self.track(0, 4, ' RIR')}", " @ bodyweight"),
            *(f" @ bodyweight + {self.track(5, 40, ' kg')}", f" @ 80% of {self.movement()}", " @ RPE 7-8"),
        )
        changes = (f" @ -{self.number(1, 50, '100', '150')}%", f" @ +{self.number(1, 50, '1000')} kg")
        return self.random.choice((*could, *changes) if self.loosely() or not first else could)

    def track(self, low: int, high: int, unit: str, *edges: str) -> str:
        first, last = self.number(low, high, *edges), self.number(low, high, *edges)
        step = self.number(1, 2, *edges)
        listed = ", ".join(self.number(low, high, *edges) for _ in range(self.random.randint(1, 6)))
        forms = (
            f"{first} -> {last}{unit}",
            f"{first}{unit} + {step}{unit}/week",
            f"[{listed}, ...]{unit}",
            f"[{listed}, repeat]{unit}",
        )
        return f"{first}{unit}" if self.chance(0.7) or not self.moves else self.random.choice(forms)

    # ---- athletes ------------------------------------------------------------------------------

    def athlete(self, name: str) -> list[str]:
        plates = ", ".join(
            f"{self.number(1, 9, '200')}x{self.number(1, 25, '0.1', '0.3')}" for _ in range(self.random.randint(1, 12))
        )
        could = (
            f"bar {self.number(5, 25, '1000', '0.5')} {self.random.choice(('kg', 'lb'))}",
            f"plates {plates} kg",
            f"dumbbells {self.number(1, 9)}-{self.number(10, 60, '1000')} kg by {self.number(1, 5, '0.1', '0.5')} kg",
            f"kettlebells {', '.join(self.number(4, 48) for _ in range(self.random.choice((1, 4, 200))))} kg",
            f"available {', '.join(self.some(DAYS, 7))}",
            f"has {', '.join(self.some(('barbell', 'rack', 'bench', 'dumbbells', 'crane'), 5))}",
            f"avoid {self.random.choice(('squat', 'hinge', 'horizontal-push', *SHIPPED))}",
            f"swap {self.movement()} for {self.movement()}",
            f"model {self.random.choice(MODELS)}",
            "round down",
            self.emphasis(),
        )
        bests = (f"best {m}: {self.number(20, 200, '1000', '0.5')} kg{self.best_set()}" for m in self.some(SHIPPED, 8))
        return [f'athlete "{name}"', *(f"  {line}" for line in (*self.some(could, 8), *bests))]

    def best_set(self) -> str:
        return self.random.choice(
            (
                "",
                "",
                f" x {self.number(1, 12, '36', '37', '1000')}",
                f" x {self.number(1, 10)} @ RPE {self.number(6, 10)}",
            )
        )
