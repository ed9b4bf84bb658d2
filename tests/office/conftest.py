"""An office suite that calculates workbooks anew. Wants LibreOffice Calc (`apt install libreoffice-calc-nogui`)."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias

import pytest
from openpyxl import Workbook, load_workbook

Recalculated: TypeAlias = Callable[[dict[str, Workbook]], dict[str, Workbook]]

# OOXMLRecalcMode 0: always, whatever values a file brings.
SETTINGS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse">
<value>0</value></prop></item></oor:items>
"""


@pytest.fixture(scope="session")
def recalculated(tmp_path_factory: pytest.TempPathFactory) -> Recalculated:
    """Takes workbooks by name, and gives them back with the values that their formulas have now."""
    profile = tmp_path_factory.mktemp("office")
    (profile / "user").mkdir()
    (profile / "user" / "registrymodifications.xcu").write_text(SETTINGS)

    def calculate(books: dict[str, Workbook]) -> dict[str, Workbook]:
        folder = tmp_path_factory.mktemp("books")
        for name, book in books.items():
            book.save(folder / f"{name}.xlsx")  # openpyxl keeps formulas and drops the values beside them
        made = folder / "made"
        convert(profile, made, *(folder / f"{name}.xlsx" for name in books))
        return {name: load_workbook(made / f"{name}.xlsx", data_only=True) for name in books}

    return calculate


def convert(profile: Path, made: Path, *files: Path) -> None:
    command = ["soffice", "--headless", f"-env:UserInstallation={profile.as_uri()}", "--convert-to", "xlsx"]
    done = subprocess.run(
        [*command, "--outdir", str(made), *map(str, files)], capture_output=True, text=True, timeout=300, check=False
    )
    assert done.returncode == 0, done.stderr
    assert sorted(file.name for file in made.iterdir()) == sorted(file.name for file in files), done.stderr
