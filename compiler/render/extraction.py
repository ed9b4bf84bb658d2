"""Finds the titles of the shipped muscles for the catalogues' extraction (`pybabel`, see DEVELOPERS.md).

Comes in: the file `stdlib/muscles.plan`. Goes out: its titles, in the form that Babel takes from an extractor.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import IO, Final

_MUSCLE: Final = re.compile(rb'^muscle \S+ "([^"]+)"')


def titles(
    file: IO[bytes], keywords: object, comments: object, options: Mapping[str, object]
) -> Iterator[tuple[int, str, str, list[str]]]:
    """For each title its line, the name of a function that is extracted, itself, and no comments."""
    for number, line in enumerate(file, 1):
        found = _MUSCLE.match(line)
        if found:
            yield number, "message", found.group(1).decode(), []
