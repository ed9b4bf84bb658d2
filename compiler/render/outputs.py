"""The formats that a plan can be printed in, in one table; a module is loaded when its format is asked for.

Comes in: `Material` and a `Look`. Goes out: the bytes of a file.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Final, Protocol, cast

from setwright.record import record

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.render.material import Look, Material


@record
class Output:
    """A format: its name, which is also the ending of its files, and the module whose `rendered` makes it.

    `extra` is the optional part of the package that it needs, and `needs` the library that this part brings. `binary`
    marks what a terminal cannot show.
    """

    name: str
    module: str
    about: str
    extra: str | None = None
    needs: str | None = None
    binary: bool = False


OUTPUTS: Final = (
    Output("html", "setwright.render.html", "one page for the screen and the printer"),
    Output("md", "setwright.render.markdown", "Markdown, for code hosts"),
    Output("csv", "setwright.render.csv", "a row for each segment, week and session"),
    Output("json", "setwright.render.json", "everything, for programs"),
    Output("xlsx", "setwright.render.xlsx", "a workbook to write on, volume by formulas", "xlsx", "xlsxwriter", True),
    Output("ics", "setwright.render.ics", "a calendar, each session an event", "ics", "icalendar"),
    Output("pdf", "setwright.render.pdf", "the page on paper, with bookmarks", "pdf", "weasyprint", True),
)


class MissingExtraError(Exception):
    """A format whose library is not installed."""

    def __init__(self, output: Output) -> None:
        super().__init__(output.name)
        self.output = output


class UnprintableError(Exception):
    """What a format cannot do without is not there; the text says what it is, and what to write or to install."""


class FaultyTemplateError(Exception):
    """A club's template that could not be carried out, with the place where it fails."""

    def __init__(self, diagnostic: Diagnostic) -> None:
        super().__init__(diagnostic.message)
        self.diagnostic = diagnostic


class _Module(Protocol):
    def rendered(self, material: Material, look: Look) -> bytes: ...


def rendered(output: Output, material: Material, look: Look) -> bytes:
    """The plan in one format.

    Raises `MissingExtraError` where an optional part is not installed, `FaultyTemplateError` for a club's template,
    `UnprintableError` for what a format cannot do without.
    """
    try:
        return cast(_Module, import_module(output.module)).rendered(material, look)
    except ModuleNotFoundError as error:
        if output.needs is not None and error.name is not None and error.name.partition(".")[0] == output.needs:
            raise MissingExtraError(output) from error
        raise
