"""What changes for the athlete as Markdown, for the text of a pull request.

Comes in: a `FileDifference`. Goes out: Markdown text.
"""

from __future__ import annotations

from setwright.render.difference import NO_CHANGE, parts
from setwright.render.difference.rows import Row, Sign
from setwright.render.markdown import escape
from setwright.report.difference.model import FileDifference

_SIGNS = {Sign.MORE: "**+**", Sign.LESS: "**−**", Sign.OTHER: "", Sign.BROKEN: "**!**"}


def markdown_text(of: FileDifference) -> str:
    """Headings a plan, a block and a day, a list under each."""
    lines: list[str] = []
    for part in parts(of):
        lines += ["", f"{'#' * (part.level + 1)} {escape(part.title)}", *([""] if part.rows else [])]
        lines += [_row(row) for row in part.rows]
    return "\n".join(lines[1:] or [NO_CHANGE]) + "\n"


def _row(row: Row) -> str:
    said = [_SIGNS[row.sign], f"{row.when}:" if row.when else "", escape(row.text)]
    return "- " + " ".join(word for word in said if word)
