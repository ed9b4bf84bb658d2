"""How the sheets of a club look, from what the command line and `setwright.toml` say.

Comes in: the window to the files, the options that were given. Goes out: a `Look`, and diagnostics.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TypeVar

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import reading
from setwright.diagnostics.catalogue import sheets as codes
from setwright.files import Files
from setwright.render import settings
from setwright.render.language import ENGLISH, Language, LanguageError, language
from setwright.render.logo import LogoError, data_address
from setwright.render.material import Look
from setwright.render.settings import Setting
from setwright.roots import SETTINGS
from setwright.source import Source, Span

Read = TypeVar("Read", bytes, Source)


def look(files: Files, options: Mapping[str, str | None], problems: list[Diagnostic]) -> Look:
    """The look that was asked for. Options, by the names of the settings, go before what the file says."""
    asked = {**_of_the_file(files, problems), **settings.given(options, problems)}
    club = asked.get("club")
    return Look(
        language=_language(asked.get("language"), problems),
        club=club.text if club else None,
        logo=_logo(files, asked.get("logo"), problems),
        colour=_colour(asked.get("colour"), problems),
        template=_read(files, asked.get("template"), problems, files.read),
    )


def _of_the_file(files: Files, problems: list[Diagnostic]) -> dict[str, Setting]:
    path = files.root / SETTINGS
    if not files.exists(path):
        return {}
    source = files.read(path, os.path.relpath(path))
    if isinstance(source, Diagnostic):
        problems.append(source)
        return {}
    return settings.read(source, problems)


def _language(asked: Setting | None, problems: list[Diagnostic]) -> Language:
    if asked is None:
        return ENGLISH
    try:
        return language(asked.text)
    except LanguageError as error:
        problems.append(codes.UNKNOWN_LANGUAGE.at(asked.span, reason=str(error)))
        return ENGLISH


def _colour(asked: Setting | None, problems: list[Diagnostic]) -> str | None:
    if asked is None:
        return None
    if re.fullmatch(r"#[0-9a-fA-F]{6}", asked.text):
        return asked.text.lower()
    problems.append(codes.BAD_COLOUR.at(asked.span, written=asked.text, help="Write it as `#7a1f3d`."))
    return None


def _logo(files: Files, asked: Setting | None, problems: list[Diagnostic]) -> str | None:
    content = _read(files, asked, problems, files.content)
    if asked is None or content is None:
        return None
    try:
        return data_address(content)
    except LogoError as error:
        problems.append(codes.BAD_LOGO.at(asked.span, file=asked.text, reason=error))
        return None


def _read(
    files: Files,
    asked: Setting | None,
    problems: list[Diagnostic],
    reading: Callable[[Path, str, Span | None], Read | Diagnostic],
) -> Read | None:
    """What `reading` makes of the file that was asked for; None where there is none, or it cannot be read."""
    path = _path(files, asked, problems)
    if asked is None or path is None:
        return None
    found = reading(path, asked.text, asked.span)
    if isinstance(found, Diagnostic):
        problems.append(found)
        return None
    return found


def _path(files: Files, asked: Setting | None, problems: list[Diagnostic]) -> Path | None:
    """Where a file lies: one that the workspace names stays in it, one that is typed may be anywhere."""
    if asked is None:
        return None
    if asked.typed:
        return Path(asked.text)
    path = files.root / asked.text
    if files.allows(path, files.root / SETTINGS):
        return path
    help_ = f"The workspace is {files.root}, where `{SETTINGS}` lies."
    problems.append(reading.OUTSIDE_ROOT.at(asked.span, file=asked.text, home="the workspace", help=help_))
    return None
