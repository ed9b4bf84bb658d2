"""A finished page read again: its styles, its text, and what would reach out of it.

Comes in: HTML. Goes out: what the policy is made from, and what a template is told about.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterator
from hashlib import sha256
from html.parser import HTMLParser
from typing import Final

_RAW: Final = ("style", "script")
_DATA: Final = ("application/json", "text/plain")


class Finished(HTMLParser):
    """The page's styles and scripts as they stand, and its text with single spaces."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.styles: list[str] = []
        self._scripts: list[str] = []
        self._links: list[str] = []
        self._text: list[str] = []
        self._inside: str | None = None
        self.feed(page)
        self.close()

    @property
    def text(self) -> str:
        """What a person reads on the page."""
        return " ".join("".join(self._text).split())

    def foreign(self, policy: str) -> Iterator[str]:
        """What no policy keeps in, and scripts that it would keep from running: said, not left to be found out."""
        yield from self._links
        if any(source_hash(script) not in policy for script in self._scripts):
            yield "a `<script>` of its own, which no sheet runs,"

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note what it is: styles and scripts are kept, and what a policy does not hold."""
        said = dict(attrs)
        self._inside = tag if tag in _RAW else None
        if tag == "style":
            self.styles.append("")
        elif tag == "script":
            if said.get("type") in _DATA:
                self._inside = "data"
            else:
                self._scripts.append("")
        elif tag == "meta" and "http-equiv" in said:
            self._links.append("`<meta http-equiv>`")
        elif tag == "link" and not (said.get("href") or "").startswith("data:"):
            self._links.append("`<link>` to another file")

    def handle_endtag(self, tag: str) -> None:
        """The end of a style or script."""
        self._inside = None

    def handle_data(self, data: str) -> None:
        """Text goes to where it stands."""
        if self._inside is None:
            self._text.append(data)
        elif self._inside in _RAW:
            kept = self.styles if self._inside == "style" else self._scripts
            kept[-1] += data


def source_hash(text: str) -> str:
    """How a policy names a text that it lets through: its SHA-256 (Content Security Policy Level 3, W3C)."""
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"
