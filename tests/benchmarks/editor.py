"""What a keystroke and a hover cost at the language server, in a workspace of a thousand lines. Run with Python.

The workspace is the twelve-week plan, which uses a library of a club's own, its athlete, and the plan of another
scenario; together a thousand lines, all open. A key is typed in the plan, then in the library. What is timed is what
the server does from the changed text to the findings as the protocol has them, without the pipe to the editor.
"""

from __future__ import annotations

import gc
import statistics
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from lsprotocol import types as lsp
from measuring import seconds

from setwright.editor.features import FEATURES
from setwright.editor.features.diagnostics import published
from setwright.editor.session import Document, EditorSession

EXAMPLES = Path(__file__).parents[2] / "examples"
LINES = 1000
KEYS = 60
MOST_KEY, MOST_HOVER = 50, 10  # milliseconds


def main() -> None:
    gc.freeze()  # as the server does
    with TemporaryDirectory() as folder:
        root = Path(folder).resolve()
        texts = workspace(root)
        total = sum(len(text.splitlines()) for text in texts.values())
        print(f"{total} lines in {len(texts)} files; Python {sys.version.split()[0]}")
        session = EditorSession(athlete="runa.plan")
        for name, text in texts.items():
            put(session, root / name, text, 1)
        published(session)
        keys(
            "a key in a line of the plan",
            session,
            root / "plan.plan",
            texts["plan.plan"],
            "@ 70% -> 75%",
            "@ 7{}% -> 76%",
        )
        keys("a key in a note", session, root / "plan.plan", texts["plan.plan"], "closes at nine", "closes at nine{}")
        keys(
            "a new line in the plan",
            session,
            root / "plan.plan",
            texts["plan.plan"],
            "  units kg",
            "  units kg\n  # {}",
        )
        keys(
            "a key in the library",
            session,
            root / "club.plan",
            texts["club.plan"],
            "  works quads 1",
            "  works quads 0.{}",
        )
        hovers(session, root / "plan.plan", texts["plan.plan"])
        both = texts["plan.plan"] + texts["runa.plan"].partition("use stdlib.exercises\n")[2]
        keys(
            "a key in a note, with an athlete", session, root / "plan.plan", both, "closes at nine", "closes at nine{}"
        )


def workspace(root: Path) -> dict[str, str]:
    """The files by name, written into the folder."""
    harbour = EXAMPLES / "harbour-twelve-weeks"
    plan = (harbour / "harbour-twelve-weeks.plan").read_text(encoding="utf-8")
    texts = {
        "plan.plan": plan.replace("use stdlib.exercises\n", 'use stdlib.exercises\nuse "club.plan"\n'),
        "runa.plan": (harbour / "runa.plan").read_text(encoding="utf-8"),
        "other.plan": (EXAMPLES / "fire-crew-eight-days" / "fire-crew-eight-days.plan").read_text(encoding="utf-8"),
    }
    rest = LINES - sum(len(text.splitlines()) for text in texts.values())
    texts["club.plan"] = library(rest)
    (root / "setwright.toml").touch()
    for name, text in texts.items():
        (root / name).write_text(text, encoding="utf-8")
    return texts


def library(lines: int) -> str:
    """So many lines of movements that a club made up."""
    made = ["use stdlib.exercises"]
    number = 1
    while len(made) + 5 <= lines:
        made += [
            f'exercise "Loft Lift {number}"',
            "  pattern squat",
            "  needs barbell",
            "  works quads 1",
            '  cue "Slowly."',
        ]
        number += 1
    return "\n".join([*made, *["#"] * (lines - len(made))]) + "\n"


def put(session: EditorSession, file: Path, text: str, version: int) -> None:
    session.put(Document(file.as_uri(), str(file), text, version))


def keys(name: str, session: EditorSession, file: Path, text: str, old: str, new: str) -> None:
    """Type again and again, each time another text, and wait for the findings."""
    assert old in text, old

    def key(number: int) -> None:
        put(session, file, text.replace(old, new.format(number % 10), 1), number)
        published(session)

    told(name, [lambda number=number: key(number) for number in range(KEYS)], MOST_KEY)
    put(session, file, text, KEYS)
    published(session)


def hovers(session: EditorSession, file: Path, text: str) -> None:
    """Look at one line after the other."""
    answer = next(feature.answer for feature in FEATURES if feature.method == lsp.TEXT_DOCUMENT_HOVER)
    document = lsp.TextDocumentIdentifier(file.as_uri())
    places = [
        lsp.Position(number, line.index(":") - 2)
        for number, line in enumerate(text.split("\n"))
        if line.startswith("      ") and " x " in line and ":" in line
    ]
    told(
        "hover over a line of a day",
        [lambda at=at: answer(session, lsp.HoverParams(document, at)) for at in places],
        MOST_HOVER,
    )


def told(name: str, work: list[Callable[[], object]], most: int) -> None:
    """Print the median, and the slowest of ten."""
    work[0]()
    taken = sorted(seconds(each) * 1000 for each in work)
    slow = taken[int(len(taken) * 0.9)]
    print(f"{name:32} median {statistics.median(taken):6.1f} ms  (at most {most})   nine of ten under {slow:6.1f} ms")


if __name__ == "__main__":
    main()
