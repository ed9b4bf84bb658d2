"""The sheets of a build, all of them made before any is written.

Comes in: compiled plans, formats, a look. Goes out: file names and bytes; what a club's template does wrong is told.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import tell_or_exit
from setwright.cli.names import stems
from setwright.cli.trouble import Trouble
from setwright.record import replace

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.pipeline import Compilation
    from setwright.plan import Plan
    from setwright.render.material import Look, Material
    from setwright.render.outputs import Output
    from setwright.report.overview import WeekSummary
    from setwright.report.volume import Volume

# So many files are there before anybody wonders; on a terminal, more than these get a progress bar.
QUICK = 8


def sheets(
    compiled: tuple[Compilation, ...], formats: tuple[Output, ...], week: int | None, look: Look
) -> dict[str, bytes]:
    """File names and contents."""
    names = stems((one.plan.name, one.plan.athlete, f"week {week}" if week else None) for one in compiled)
    made: dict[str, bytes] = {}
    problems: list[Diagnostic] = []
    with _progress(len(compiled) * len(formats)) as done:
        for name, one in zip(names, compiled, strict=True):
            material = _material(one, week)
            for form in formats:
                made[f"{name}.{form.name}"] = _rendered(form, material, look, problems)
                done()
    tell_or_exit(problems)
    return made


def _rendered(form: Output, material: Material, look: Look, problems: list[Diagnostic]) -> bytes:
    """One sheet; nothing in place of one whose template fails, which is a problem."""
    from setwright.render.outputs import FaultyTemplateError, MissingExtraError, UnprintableError, rendered

    try:
        content = rendered(form, material, look)
    except MissingExtraError as missing:
        raise Trouble(f"`--format {form.name}` needs `pip install 'setwright[{missing.output.extra}]'`") from missing
    except UnprintableError as lack:
        raise Trouble(f"`--format {form.name}`: {lack}") from lack
    except FaultyTemplateError as faulty:
        problems.append(faulty.diagnostic)
        return b""
    if look.template is not None and form.name == "html":
        from setwright.render.html.club import cautions_left_out

        problems.extend(cautions_left_out(look.template, content.decode(), material, look))
    return content


@contextmanager
def _progress(count: int) -> Iterator[Callable[[], None]]:
    """A bar on standard error, where somebody watches it and it takes long; gives what each file done calls."""
    if count <= QUICK or sys.stderr is None or not sys.stderr.isatty():
        yield lambda: None
        return
    with click.progressbar(length=count, label="sheets", file=sys.stderr) as bar:
        yield lambda: bar.update(1)


def _material(compilation: Compilation, week: int | None) -> Material:
    from setwright.render.material import Material
    from setwright.report.overview import overview
    from setwright.report.targets import targets
    from setwright.report.volume import volume

    plan = compilation.plan
    figures = volume(plan, compilation.promise)
    summaries = overview(plan)
    asked = targets(plan, compilation.promise)
    if week:
        plan, figures, summaries = _only_week(week, plan, figures, summaries)
        asked = asked.within({week})
    return Material(plan, figures, summaries, compilation.promise, asked)


def _only_week(
    number: int, plan: Plan, figures: Volume, summaries: tuple[WeekSummary, ...]
) -> tuple[Plan, Volume, tuple[WeekSummary, ...]]:
    """One week of each, with its figures as they are in the whole plan."""
    from setwright.report.volume import Volume

    weeks = tuple(week for week in plan.weeks if week.number == number)
    if not weeks:
        count = len(plan.weeks)
        raise Trouble(f"there is no week {number}: {plan.name} has {count} week{'' if count == 1 else 's'}")
    return (
        replace(plan, weeks=weeks, blocks=tuple(b for b in plan.blocks if b.first_week <= number <= b.last_week)),
        Volume(tuple(row for row in figures.rows if row.week == number)),
        tuple(summary for summary in summaries if summary.number == number),
    )
