"""Makes plans that nobody would write, and that the compiler has to answer all the same.

Comes in: a random generator. Goes out: the text of one file, mostly readable and often extreme.
"""

from __future__ import annotations

from hostile_lines import OWN, SHIPPED, Lines

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
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


class Maker(Lines):
    """One file's text."""

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

    def tricked(self, line: str) -> str:
        if not self.chance(self.extreme / 20):
            return line
        at = self.random.randint(0, len(line))
        return line[:at] + self.random.choice(TRICKY) * self.random.choice((1, 1, 3, 500)) + line[at:]

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
                source = self.movement() if self.loosely() else self.random.choice(SHIPPED)
                lines.append(f"  best from {source} {self.number(50, 150, '150', '0.5')}%")
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
