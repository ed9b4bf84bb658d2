"""How laying out and rendering grow with a plan: four times the work, how many times the time? Run with Python."""

from __future__ import annotations

from collections.abc import Callable

from measuring import compared

from setwright.pipeline import compile
from setwright.render import html
from setwright.render.material import Material
from setwright.report.overview import overview
from setwright.report.volume import volume

PAIRS = 7
DAYS = ("Mon", "Tue", "Thu", "Fri")
MOVEMENTS = 12


def plan(weeks: int, movements: int) -> str:
    """A plan of four days a week; movements are declared here, so that no library is read."""
    names = [f"Lift {letter}{other}" for letter in "ABCDEFGH" for other in "abcdefgh"][:movements]
    declared = "".join(f'exercise "{name}"\n  works quads 1, glutes 0.5\n' for name in names)
    lines = "".join(f'      "{name}": 3 -> 5 x 5 @ 70% -> 85%, rest 2 min, tempo 3-1-1-0\n' for name in names)
    days = "".join(f"    day {day}\n{lines}" for day in DAYS)
    return f'muscle quads\nmuscle glutes\n{declared}\nplan "Growth"\n  block Base: {weeks} weeks\n{days}'


def rendered(text: str) -> Callable[[], object]:
    """From text to HTML."""

    def work() -> object:
        made = compile("growth.plan", text=text).compilations[0]
        return html.page(Material(made.plan, volume(made.plan, made.promise), overview(made.plan)))

    return work


def main() -> None:
    print("from text to HTML, four times the work to once")
    compared("  4 x the weeks", rendered(plan(104, MOVEMENTS)), rendered(plan(26, MOVEMENTS)), 4.4, PAIRS)
    compared("  4 x the movements", rendered(plan(26, 4 * MOVEMENTS)), rendered(plan(26, MOVEMENTS)), 4.4, PAIRS)


if __name__ == "__main__":
    main()
