"""A page by a club's own template.

Comes in: the template and what every page is given. Goes out: the text of the page, with the policy that fits it, or
a `FaultyTemplateError` that says where the template fails.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, Final

from jinja2 import Environment
from jinja2.exceptions import TemplateNotFound, TemplateSyntaxError, UndefinedError
from markupsafe import escape

from setwright.diagnostics import Code, Diagnostic
from setwright.diagnostics.catalogue import sheets as codes
from setwright.render.cautions import Caution
from setwright.render.html.finished import Finished, source_hash
from setwright.render.html.sandbox import CLUB, ClubEnvironment, LimitError
from setwright.render.material import Look, Material
from setwright.render.outputs import FaultyTemplateError
from setwright.render.sheet import Sheet, sheet
from setwright.source import Source, Span

# Before the policy stands nothing that a browser would carry out: an attribute like `onclick` would be.
_START: Final = re.compile(
    r"\s*<!DOCTYPE html>\s*<html(?:\s+(?:lang|dir|class)=\"[^\"<>]*\")*\s*>\s*<head>", re.IGNORECASE
)


def club_page(template: Source, shipped: Environment, given: Mapping[str, Any]) -> str:
    """The page, with a policy that lets its own styles through; `given["policy"]` is that of a page without any."""
    text = _rendered(template, shipped, {**given, "policy": ""})
    start = _START.match(text)
    if start is None:
        raise _fault(template, codes.TEMPLATE_PAGE, "it does not begin with `<!DOCTYPE html>`, `<html>` and `<head>`")
    policy = str(given["policy"])
    finished = Finished(text)
    for element in finished.foreign(policy):
        raise _fault(template, codes.TEMPLATE_PAGE, f"{element} is in it")
    styles = " ".join(source_hash(style) for style in finished.styles)
    policy = re.sub(r"style-src [^;]*", f"style-src {styles}" if styles else "style-src 'none'", policy, count=1)
    meta = f'<meta http-equiv="Content-Security-Policy" content="{escape(policy)}">'
    return f"{text[: start.end()]}\n{meta}{text[start.end() :]}"


def cautions_left_out(template: Source, page: str, material: Material, look: Look) -> Iterator[Diagnostic]:
    """A warning where a caution of the sheet does not stand on the page."""
    said = dict.fromkeys(_cautions(sheet(material.plan, material.overview, look.language)))
    text = Finished(page).text
    missing = [head for head, caution in said if _plain(caution) not in text]
    if missing:
        first = Span(template, 1, 0, len(template.line(1)))
        yield codes.CAUTIONS_LEFT_OUT.at(first, left_out=len(missing), count=len(said), head=missing[0])


def _cautions(sheet: Sheet) -> Iterator[Caution]:
    yield from sheet.cautions
    for week in sheet.weeks:
        yield from week.cautions
        for session in week.sessions:
            yield from session.cautions


def _plain(text: str) -> str:
    return " ".join(text.split())


@cache
def _environment(template: Source, shipped: Environment) -> ClubEnvironment:
    assert shipped.loader is not None
    made = ClubEnvironment(template, shipped.loader)
    made.globals.update({name: value for name, value in shipped.globals.items() if name not in _BUILT_IN})
    return made


_BUILT_IN: Final = frozenset(Environment().globals)


def _rendered(template: Source, shipped: Environment, given: Mapping[str, Any]) -> str:
    environment = _environment(template, shipped)
    arranged = given["sheet"]
    assert isinstance(arranged, Sheet)
    environment.begin(sum(len(week.sessions) for week in arranged.weeks))
    pieces: list[str] = []
    length = 0
    try:
        for piece in environment.get_template(CLUB).generate(given):
            pieces.append(piece)
            length += len(piece)
            if length > environment.most_characters:
                raise LimitError(f"the page has more than {environment.most_characters:,} characters")
    except TemplateSyntaxError as error:
        line = error.lineno if error.name == CLUB else _line_of(error, template)
        raise _fault(template, codes.TEMPLATE_UNREADABLE, _one_line(error.message), line) from None
    except (LimitError, OverflowError, RecursionError, MemoryError) as error:
        raise _fault(template, codes.TEMPLATE_LIMIT, _reason(error), _line_of(error, template)) from None
    except Exception as error:  # whatever a template may do to the values it is given
        raise _fault(template, codes.TEMPLATE_STOPS, _reason(error), _line_of(error, template)) from None
    return "".join(pieces)


def _line_of(error: BaseException, template: Source) -> int:
    """The innermost line of the template on the way to the error; jinja2 puts such lines into tracebacks."""
    at, line = error.__traceback__, 1
    while at is not None:
        if at.tb_frame.f_code.co_filename == template.path:
            line = at.tb_lineno
        at = at.tb_next
    return line


def _reason(error: Exception) -> str:
    match error:
        case TemplateNotFound():
            return f"there is no shipped template `{error.name}`, and no other file is read"
        case RecursionError():
            return "it is nested too deep, or calls itself without end"
        case MemoryError():
            return "it takes too much memory"
        case UndefinedError() | LimitError() | OverflowError():
            return _one_line(str(error))
        case _:
            return _one_line(str(error) or type(error).__name__)


def _one_line(text: str | None) -> str:
    return _plain(text or "").removesuffix(".")[:200]


def _fault(template: Source, code: Code, reason: str, line: int = 1) -> FaultyTemplateError:
    return FaultyTemplateError(code.at(Span(template, line, 0, len(template.line(line))), reason=reason))
