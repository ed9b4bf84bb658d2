"""`setwright diff` as git calls it: GIT_EXTERNAL_DIFF, or the command of a `diff=` driver (gitattributes(5), git(1)).

Comes in: the arguments of git. Goes out: text, always, since git stops where a driver fails: a file that is no plan,
or holds an error, is shown line by line, and a line says why.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from difflib import unified_diff
from typing import TYPE_CHECKING, Final

from setwright.cli.sides import errors_of
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.plan import Plan
    from setwright.report.difference.model import FileDifference
    from setwright.rules import Promise

MOST_BYTES: Final = 1_000_000  # to compare line by line here
_NOTHING: Final = b""
_SYMLINK: Final = "120000"

Printer = Callable[["FileDifference", str], str]


def told(arguments: tuple[str, ...], athletes: tuple[str, ...], form: str, printed: Printer) -> str:
    """What git shows: path, old file, hex and mode, new file, hex and mode; for a rename the new path and how alike."""
    from setwright.diagnostics.printers.characters import visible

    if len(arguments) == 1:
        return f"{visible(arguments[0])}: not merged yet\n"
    if len(arguments) not in (7, 8, 9):
        raise Trouble(f"git gives a driver 7 arguments (8 or 9 for a rename), and these are {len(arguments)}")
    path, old_file, _, old_mode, new_file, _, new_mode = arguments[:7]
    new_path = arguments[7] if len(arguments) > 7 else path
    before, after = _content(old_file), _content(new_file)
    made = _difference((path, before), (new_path, after), athletes, _SYMLINK in (old_mode, new_mode))
    if form == "json" and not isinstance(made, str):
        return printed(made, form)
    head = f"{visible(path)}" + (f" is now {visible(new_path)}" if new_path != path else "")
    if isinstance(made, str):
        return f"{head}: {visible(made)}\n" + "".join(_lines(path, before, new_path, after))
    return f"{head}: what changes for the athlete\n\n{printed(made, form)}\n"


def _content(file: str) -> bytes:
    if file in (os.devnull, "/dev/null"):
        return _NOTHING
    try:
        with open(file, "rb") as stream:
            return stream.read()
    except OSError:
        return _NOTHING


def _difference(
    old: tuple[str, bytes], new: tuple[str, bytes], athletes: tuple[str, ...], is_link: bool
) -> FileDifference | str:
    """The difference, or why there is none but that of the lines."""
    if is_link or not all(path.endswith(".plan") for path, _ in (old, new)):
        return "not a plan, so its lines"
    sides: list[list[tuple[Plan, Promise]]] = []
    for word, (path, content) in (("old", old), ("new", new)):
        plans = _plans(path, content, athletes)
        if isinstance(plans, str):
            return f"the {word} side {plans}, so its lines"
        sides.append(plans)
    if not any(sides):
        return "holds no plan, so its lines"
    from setwright.report.difference import file_difference

    return file_difference(*sides)


def _plans(path: str, content: bytes, athletes: tuple[str, ...]) -> list[tuple[Plan, Promise]] | str:
    """The plans of one side; what it imports is read from the folder as it is, since git does not say the revision."""
    if not content:
        return []
    from setwright.files import LARGEST_FILE
    from setwright.pipeline import compile

    if len(content) > LARGEST_FILE:
        return "is too large"
    made = compile(path, athletes=athletes, text=content.decode("utf-8", "surrogateescape"))
    errors = errors_of(made)
    if errors:
        first = errors[0]
        return f"has errors (the first: {first.span.source.path}:{first.span.line}: {first.message})"
    return [(one.plan, one.promise) for one in made.compilations]


def _lines(old_path: str, before: bytes, new_path: str, after: bytes) -> Iterator[str]:
    """A plain unified difference, as far as it can be shown."""
    from setwright.diagnostics.printers.characters import visible

    if b"\0" in before or b"\0" in after:
        yield "  binary files, which differ\n"
        return
    if max(len(before), len(after)) > MOST_BYTES:
        yield "  too long to show here; `git diff --no-ext-diff` shows it\n"
        return
    old, new = (content.decode("utf-8", "replace").splitlines() for content in (before, after))
    for line in unified_diff(old, new, f"a/{visible(old_path)}", f"b/{visible(new_path)}", lineterm=""):
        yield visible(line) + "\n"
