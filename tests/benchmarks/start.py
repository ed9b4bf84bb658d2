"""How fast `setwright check` starts, against the time of importing its three libraries. Run this file with Python."""

from __future__ import annotations

import compileall
import os
import shutil
import sys
import tempfile
from pathlib import Path

from measuring import compared, process

import setwright

PLAN = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks" / "harbour-twelve-weeks.plan"
LIBRARIES = [sys.executable, "-c", "import lark, click, jinja2"]
CHECK = [sys.executable, "-c", "from setwright.cli import main; main()", "check", str(PLAN)]
PAIRS = 21


def main() -> None:
    # As pip leaves an installed package: with its modules compiled.
    compileall.compile_dir(str(Path(setwright.__file__).parent), quiet=2)
    with tempfile.TemporaryDirectory() as folder:
        cache = Path(folder) / "cache"
        environment = {**os.environ, "XDG_CACHE_HOME": str(cache)}
        libraries, check = process(LIBRARIES, environment), process(CHECK, environment)

        def first() -> None:
            shutil.rmtree(cache, ignore_errors=True)
            check()

        print("check of the twelve-week example, to `import lark, click, jinja2`")
        compared("  first run, nothing cached", first, libraries, 2.5, PAIRS)
        compared("  second run", check, libraries, 1.0, PAIRS)


if __name__ == "__main__":
    main()
