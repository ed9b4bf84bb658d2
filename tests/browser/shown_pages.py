"""The pages that are checked as a whole: each kind of page, written to a folder."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from languages import plans
from run_command import run_command
from setwright.render import html
from setwright.render.gathered import only_session
from setwright.render.language import ENGLISH, Language, language
from setwright.render.material import Look
from sheets.logged_plans import material

EXAMPLES: Final = Path(__file__).parents[2] / "examples"
HARBOUR: Final = EXAMPLES / "harbour-twelve-weeks"
CLUB: Final = EXAMPLES / "rowing-club-library"


class RightToLeft(Language):
    """English words on a page that runs from right to left: no such language is shipped yet."""

    direction = "rtl"


def _sheet(folder: Path) -> str:
    plan, athlete = HARBOUR / "harbour-twelve-weeks.plan", HARBOUR / "runa.plan"
    return _built(folder, "build", str(plan), "--athlete", str(athlete), "-o", str(folder), "--format", "html")


def _german(folder: Path) -> str:
    plan, athlete = EXAMPLES / "quarry-town-test" / "quarry-town-test.plan", EXAMPLES / "quarry-town-test"
    dressed = ("--language", "de", "--why")
    return _built(folder, "build", str(plan), "--athlete", str(athlete / "pernille.plan"), "-o", str(folder), *dressed)


def _club(folder: Path) -> str:
    template = str(CLUB / "boathouse-wall.html.j2")
    return _built(folder, "build", str(CLUB / "rowing-club-library.plan"), "--template", template, "-o", str(folder))


def _comparison(folder: Path) -> str:
    compared = (HARBOUR / "harbour-twelve-weeks.plan", EXAMPLES / "quarry-town-test" / "quarry-town-test.plan")
    answer = run_command("compare", *map(str, compared), "--format", "html")
    assert answer.exit_code == 0, answer.stderr
    return answer.stdout


def _hebrew(of: Language) -> Callable[[Path], str]:
    return lambda _: html.page(plans.material(), Look(language=of))


PAGES: Final[dict[str, Callable[[Path], str]]] = {
    "sheet": _sheet,
    "German, with reasons": _german,
    "Hebrew names": _hebrew(ENGLISH),
    "Hebrew names, German": _hebrew(language("de")),
    "right to left": _hebrew(RightToLeft()),
    "template": _club,
    "comparison": _comparison,
    "with a log": lambda folder: html.page(material(folder)),
    "one session": lambda folder: html.session_page(only_session(material(folder), 2, 3)),
}


def page_of(name: str, folder: Path) -> Path:
    """The page of that name, in a folder of its own."""
    built = folder / "built"
    built.mkdir(exist_ok=True)
    path = folder / "page.html"
    path.write_text(PAGES[name](built), encoding="utf-8")
    return path


def _built(folder: Path, *arguments: str) -> str:
    answer = run_command(*arguments)
    assert answer.exit_code == 0, answer.stderr
    (page,) = folder.glob("*.html")
    return page.read_text(encoding="utf-8")
