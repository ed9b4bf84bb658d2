"""The texts that `setwright new --pack` writes: a Python package that holds plans for others to use.

Comes in: the pack's name. Goes out: its files by path, with comments that say what each is for.
"""

from __future__ import annotations

import re
import sys
from keyword import iskeyword

from setwright.cli.trouble import Trouble

_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_TAKEN = ("setwright", "stdlib")


def pack_files(name: str) -> dict[str, str]:
    """The files of a pack by their paths in its folder; `name` is what plans will call it."""
    if not _NAME.fullmatch(name) or name in _TAKEN:
        raise Trouble(
            f"a pack cannot be called `{name}`: plans and pip both use the name, which is lower-case words of the "
            f"letters a to z, with digits and hyphens between them, and not {' or '.join(f'`{one}`' for one in _TAKEN)}"
        )
    package = package_of(name)
    texts = {
        "pyproject.toml": _PROJECT,
        "README.md": _README,
        f"{package}/__init__.py": _INIT,
        f"{package}/exercises.plan": _EXERCISES,
        f"{package}/rules.plan": _RULES,
    }
    return {path: text.replace("{name}", name).replace("{package}", package) for path, text in texts.items()}


def package_of(name: str) -> str:
    """The folder of the Python package, which must not hide one of Python's own."""
    package = name.replace("-", "_")
    return f"{package}_plans" if package in sys.stdlib_module_names or iskeyword(package) else package


_PROJECT = """\
# A pack: a Python package that holds plans for others to use. Nothing in it is ever run.

[build-system]
requires = ["setuptools>=64"]
build-backend = "setuptools.build_meta"

[project]
name = "{name}"
version = "0.1.0"
description = "Movements and rules for Setwright plans"
readme = "README.md"
requires-python = ">=3.11"

# Left of the `=` stands the word that plans use, right of it the folder that holds the .plan files.
[project.entry-points."setwright.library"]
{name} = "{package}"

[tool.setuptools]
packages = ["{package}"]

# Without this line the package would be installed without its plans.
[tool.setuptools.package-data]
{package} = ["**/*.plan"]
"""

_INIT = '''\
"""Plans for Setwright; this file makes the folder a package, and needs nothing in it."""
'''

_EXERCISES = """\
# Movements of this pack: `use {name}.exercises` brings them into a plan.
#
# A file of a pack uses files of its own pack, the shipped library and other packs,
# and nothing outside. Replace these two movements with your own.

use stdlib.exercises

# A movement in full: what it trains (1 for a prime mover, 0.5 for a muscle that clearly
# helps), what it needs, and what may stand in for it.
exercise Quay Wall Push-Up
  also "push-up on the quay wall"
  pattern horizontal-push
  works chest 1, triceps 0.5, front-delts 0.5
  swap for Push-Up
  cue "Hands on the wall at hip height, body straight from head to heels."

# A movement like another one, with what differs.
exercise Slow Goblet Squat like Goblet Squat
  cue "Count to four on the way down."
"""

_RULES = """\
# Rules of this pack: `use {name}.rules`, and `follow first-month` in a plan.
#
# `must` is an error where a plan breaks it, `should` a warning. The text in quotes is
# the reason that the message gives: say where your numbers come from.

use stdlib.muscles

rules first-month
  must effort <= RPE 8 "The first month finds the loads, not the limit."
  should session-time <= 75 min "A session that fits into an evening."
"""

_README = """\
# {name}

Movements and rules for Setwright plans.

## Use it

Install it into the environment that Setwright runs in:

```sh
python -m pip install .
```

and name it in a plan:

```text
use {name}.exercises
use {name}.rules as ours

plan "Harbour Spring"
  follow ours.first-month
  block Base: 4 weeks
    day Mon
      Slow Goblet Squat: 3 x 8 @ 2 RIR
```

`use {name}` takes all of it. With `as ours` its names are written `ours.first-month` and cannot collide with others.

## Work on it

```sh
python -m pip install -e .             # what you change is used at once
setwright check {package}/*.plan
```

## Share it

Push the folder to a git server and tag what others may rely on. They install that version, and pin it:

```sh
python -m pip install "git+https://git.example/you/{name}@v0.1.0"
uv add "git+https://git.example/you/{name}" --tag v0.1.0
```

Raise `version` in `pyproject.toml` when you change what others use, and say here what changed.
"""
