"""What the preview shows now: the last sheets that could be built, and what the last build found.

Written by the thread that builds, read by those that answer browsers.
"""

from __future__ import annotations

from json import dumps
from threading import Condition

from setwright.preview.building import Built, Page


class Stage:
    """The newest state, with a number that grows; who waits for a newer one is woken."""

    def __init__(self) -> None:
        self._newer = Condition()
        self._number = 0
        self._pages_number = 0
        self._pages: tuple[Page, ...] = ()
        self._built: Built | None = None

    def show(self, built: Built) -> None:
        """Take over a build. One with errors leaves the sheets before it standing."""
        with self._newer:
            self._number += 1
            self._built = built
            if built.pages and built.pages != self._pages:
                self._pages, self._pages_number = built.pages, self._number
            self._newer.notify_all()

    def page(self, at: int) -> Page | None:
        """A sheet by its place from 0."""
        with self._newer:
            return self._pages[at] if 0 <= at < len(self._pages) else None

    def news(self, after: int, seconds: float) -> tuple[int, str] | None:
        """The state as JSON with its number, as soon as that is past `after`; None where the time runs out first."""
        with self._newer:
            if not self._newer.wait_for(lambda: self._number > after, timeout=seconds):
                return None
            return self._number, self._as_json()

    def _as_json(self) -> str:
        assert self._built is not None
        return dumps(
            {
                "pages": [page.title for page in self._pages],
                "version": self._pages_number,
                "found": self._built.found,
            }
        )
