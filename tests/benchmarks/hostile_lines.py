"""Makes lines of a day that nobody would write: numbers at their limits, and numbers that move every way.

Comes in: a random generator. Goes out: prescriptions as text, mostly readable and often extreme.
"""

from __future__ import annotations

from random import Random

SHIPPED = ("Back Squat", "Bench Press", "Deadlift", "Pull-Up", "Dip", "Goblet Squat", "Farmer's Carry", "Lateral Raise")
OWN = ("Pier Lift", "Quay Pull", "Øre Press", '"掛け声"', '"e\u0301ve"', '"9 bells"')
PROGRESSIONS = (
    *("load-each-exposure", "double-climb", "two-over-in-two", "sets-then-load", "effort-steps", "effort-waves"),
    *("percent-steps", "percent-waves", "top-in-every-set", "own-steps"),
)


class Lines:
    """Lines for one file; `extreme` says how often a number comes from the edge of what may be written."""

    def __init__(self, random: Random) -> None:
        self.random = random
        self.extreme = random.choice((0.0, 0.0, 0.02, 0.2))
        self.loose = random.choice((0.0, 0.0, 0.02, 0.3))  # how often a line has no regard for what stands around it
        self.movements = [*SHIPPED, *OWN]
        self.microcycle = 0
        self.weeks = 4  # of the block being written
        self.moves = True  # may a number move over the weeks here?
        self.has_template = False

    def chance(self, share: float) -> bool:
        return self.random.random() < share

    def number(self, low: int, high: int, *edges: str) -> str:
        """A usual number, or now and then one of the edges."""
        if self.chance(self.extreme):
            return self.random.choice((*edges, "0", "1", "0.001", "999999999999", "1000000000000", "0.0000000001"))
        return str(self.random.randint(low, high))

    def loosely(self) -> bool:
        return self.chance(self.loose)

    def movement(self) -> str:
        return self.random.choice(self.movements)

    def some(self, of: tuple[str, ...], most: int = 3) -> list[str]:
        return self.random.sample(of, self.random.randint(1, min(most, len(of))))

    def warm_ups(self) -> str:
        count = self.random.randint(1, 60 if self.chance(self.extreme) else 4)
        return ", ".join(f"{self.number(30, 90, '100', '150')}% x {self.number(1, 9, '1000')}" for _ in range(count))

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
