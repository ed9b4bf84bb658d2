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

if TYPE_CHECKING:
    from datetime import date

    from setwright.diagnostics import Diagnostic
    from setwright.pipeline import Compilation
    from setwright.render.material import Look, Material
    from setwright.render.outputs import Output

# So many files are there before anybody wonders; on a terminal, more than these get a progress bar.
QUICK = 8


def sheets(
    compiled: tuple[Compilation, ...],
    formats: tuple[Output, ...],
    week: int | None,
    look: Look,
    on: date | None = None,
) -> dict[str, bytes]:
    """File names and contents; what was done stands in them where a day says which weeks have passed."""
    names = stems((one.plan.name, one.plan.athlete, f"week {week}" if week else None) for one in compiled)
    made: dict[str, bytes] = {}
    problems: list[Diagnostic] = []
    with _progress(len(compiled) * len(formats)) as done:
        for name, one in zip(names, compiled, strict=True):
            material = _material(one, week, on)
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


def _material(compilation: Compilation, week: int | None, on: date | None) -> Material:
    from setwright.render.gathered import NoSuchWeekError, gathered

    try:
        return gathered(compilation.plan, compilation.promise, week, log=compilation.log, on=on)
    except NoSuchWeekError as missing:
        raise Trouble(str(missing)) from missing
