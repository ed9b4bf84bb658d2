"""What reuse costs: a plan `from` a template, to the same plan written out. Run this file with Python."""

from __future__ import annotations

import re
from collections.abc import Callable
from importlib.resources import files

from measuring import compared

from setwright.pipeline import Compiled, compile
from setwright.render.csv import rows

PAIRS = 41
DAYS = ("Mon", "Tue", "Thu", "Fri")
MOVEMENTS = tuple(f"Lift {letter}" for letter in "ABCDEFGHIJKL")
DECLARED = "muscle quads\n" + "".join(f'exercise "{name}"\n  works quads 1\n' for name in MOVEMENTS) + "\n"


def blocks(first: str, sets: str, top: str, span: str) -> str:
    """Three blocks of four days; the second and third are like the first. The words stand for values or parameters."""
    line = f"{sets} x 5 @ RPE 7 -> {top}, rest 2 min, tempo 3-1-1-0\n"
    lines = f"      {first}: {line}" + "".join(f'      "{name}": {line}' for name in MOVEMENTS[1:])
    days = "".join(f"    day {day}\n{lines}" for day in DAYS)
    edits = f"    day Mon\n      {first}: {sets} x 3 @ {top}, rest 3 min\n"
    return (
        f"  block Base: {span} weeks\n{days}"
        f"  block Build: {span} weeks like Base\n{edits}  block Heavy: {span} weeks like Build\n{edits}"
    )


WRITTEN_OUT = DECLARED + 'plan "Reuse"\n' + blocks('"Lift A"', "4", "RPE 9", "4")
FROM_TEMPLATE = (
    DECLARED
    + "template four-days(main-lift, base-sets = 3, top = RPE 8, span = 6)\n"
    + blocks("main-lift", "base-sets", "top", "span")
    + '\nplan "Reuse" from four-days(main-lift: "Lift A", base-sets: 4, top: RPE 9, span: 4)\n'
)
# A shipped template is not checked by itself; one in the plan's own file is, with its defaults.
SHIPPED = 'use stdlib.templates.six-days-push-pull-legs\n\nplan "Reuse" from six-days-push-pull-legs\n'


def compiled(text: str) -> Callable[[], Compiled]:
    return lambda: compile("reuse.plan", text=text)


def shipped_written_out() -> str:
    """The shipped template as a plan of its own: its lines with the defaults in place of the parameters."""
    text = files("setwright.stdlib").joinpath("templates", "six-days-push-pull-legs.plan").read_text(encoding="utf-8")
    head = re.search(r"^template [\w-]+\((.*)\)$", text, re.MULTILINE)
    assert head is not None
    before, after = text[: head.start()], text[head.end() :]
    for parameter in head.group(1).split(", "):
        name, default = parameter.split(" = ")
        after = re.sub(rf"\b{name}\b", default, after)
    return f'{before}plan "Reuse"{after}'


def main() -> None:
    print("compiling a plan from a template, to the same plan written out")
    compared("  shipped, in a file of its own", compiled(SHIPPED), same(SHIPPED, shipped_written_out()), 1.2, PAIRS)
    compared("  in the plan's own file", compiled(FROM_TEMPLATE), same(FROM_TEMPLATE, WRITTEN_OUT), 1.2, PAIRS)


def same(text: str, other: str) -> Callable[[], Compiled]:
    """Work to time on the second text, once it is clear that both come to the same rows."""
    (one,), (two,) = compiled(text)().compilations, compiled(other)().compilations
    assert list(rows(one.plan)) == list(rows(two.plan))
    return compiled(other)


if __name__ == "__main__":
    main()
