"""A git revision as a folder of plans: raw contents, so that no filter, hook or driver of a repository runs.

Comes in: the name of a revision. Goes out: a folder for as long as it is needed, with every plan and setting of that
revision, so that imports find what they found then.
"""

from __future__ import annotations

import os
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from setwright.cli.trouble import Trouble
from setwright.files import LARGEST_FILE
from setwright.roots import SETTINGS

# Nothing of a repository's own configuration may start a program, and nothing is fetched.
_SAFE: Final = ("git", "--no-pager", "-c", "core.hooksPath=/dev/null", "-c", "core.fsmonitor=false")
_ENVIRONMENT: Final = {"GIT_OPTIONAL_LOCKS": "0", "GIT_TERMINAL_PROMPT": "0", "GIT_NO_LAZY_FETCH": "1", "LC_ALL": "C"}
_REGULAR: Final = (b"100644", b"100755")


@contextmanager
def checked_out(revision: str, repository: str) -> Iterator[str]:
    """The folder of a revision; raises Trouble for a revision that there is not."""
    tree = _tree(revision, repository)
    with tempfile.TemporaryDirectory(prefix="setwright-") as folder:
        top = Path(folder).resolve()
        (top / ".git").touch()  # the workspace begins here, as it does in the repository
        blobs = _plans(tree, repository)
        for path, content in zip(blobs, _contents(list(blobs.values()), repository), strict=True):
            place = top / path
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(content)
        yield str(top)


def top_of(folder: str) -> str:
    """The top folder of the repository that a folder lies in."""
    return os.fsdecode(_git(["rev-parse", "--show-toplevel"], folder, f"{folder}: not in a git repository")).strip("\n")


def _tree(revision: str, repository: str) -> str:
    if revision.startswith("-") or not revision or "\0" in revision:
        raise Trouble(f"`{revision}` is not the name of a revision")
    asked = ["rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{tree}}"]
    return _git(asked, repository, f"there is no revision `{revision}`").decode().strip()


def _plans(tree: str, repository: str) -> dict[str, str]:
    """Path and object of each regular file that compiling may read; symbolic links and submodules are left out."""
    listed = _git(["ls-tree", "-r", "-z", "--full-tree", tree], repository, "the revision cannot be read")
    found: dict[str, str] = {}
    for entry in filter(None, listed.split(b"\0")):
        about, _, name = entry.partition(b"\t")
        mode, _, blob = about.split(b" ")[:3]
        path = os.fsdecode(name)
        wanted = path.endswith(".plan") or os.path.basename(path) == SETTINGS
        if mode in _REGULAR and wanted and _stays_inside(path):
            found[path] = blob.decode()
    return found


def _stays_inside(path: str) -> bool:
    """A tree made by hand may hold names that lead out of the folder."""
    parts = path.split("/")
    return "\\" not in path and not any(part in ("", ".", "..") or part.casefold() == ".git" for part in parts)


def _contents(blobs: list[str], repository: str) -> Iterator[bytes]:
    asked = "".join(f"{blob}\n" for blob in blobs).encode()
    answer = _git(["cat-file", "--batch"], repository, "the revision cannot be read", asked)
    at = 0
    for _ in blobs:
        end = answer.index(b"\n", at)
        head = answer[at:end].split(b" ")
        if len(head) != 3:
            raise Trouble("the revision cannot be read: an object is missing")
        size = int(head[2])
        yield answer[end + 1 : end + 1 + min(size, LARGEST_FILE + 1)]
        at = end + 1 + size + 1


def _git(arguments: list[str], folder: str, failure: str, stdin: bytes = b"") -> bytes:
    environment = {name: value for name, value in os.environ.items() if name != "GIT_EXTERNAL_DIFF"}
    try:
        done = subprocess.run(
            [*_SAFE, *arguments],
            cwd=folder or ".",
            env={**environment, **_ENVIRONMENT},
            input=stdin,
            capture_output=True,
            check=False,
        )
    except FileNotFoundError:
        raise Trouble("git is not installed") from None
    if done.returncode:
        raise Trouble(failure)
    return done.stdout
