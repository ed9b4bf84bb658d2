"""What every phase reports with: a code from the catalogue, a place, and facts put into its message.

Comes in: spans and facts. Goes out: `Diagnostic`, which the printers and the editor read.
"""

from __future__ import annotations

from enum import Enum

from setwright.record import record
from setwright.source import Span


class Severity(Enum):
    """How much a diagnostic matters: an error stops sheets, a warning does not, a note only tells."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@record
class Related:
    """Another place that matters, and why."""

    span: Span
    text: str


@record
class Fix:
    """An edit that mends the problem: what stands under `span` becomes `replacement`."""

    span: Span
    replacement: str


@record
class Diagnostic:
    """One finding, ready to print."""

    code: Code
    severity: Severity
    message: str
    span: Span
    related: tuple[Related, ...] = ()
    help: str | None = None
    fix: Fix | None = None


@record
class Code:
    """A kind of diagnostic: its stable number and name, and everything `explain` prints.

    `message` is a format string for one line; `failing` is a plan (or several files, see
    `files`) that provokes the code, `mended` the same one put right.
    """

    number: str
    name: str
    severity: Severity
    title: str
    message: str
    text: str
    failing: str | bytes
    mended: str
    files: tuple[tuple[str, str], ...] = ()

    def at(
        self,
        span: Span,
        *,
        help: str | None = None,
        related: tuple[Related, ...] = (),
        fix: Fix | None = None,
        severity: Severity | None = None,
        **facts: object,
    ) -> Diagnostic:
        """This code found at `span`; `facts` fill the message."""
        return Diagnostic(self, severity or self.severity, self.message.format(**facts), span, related, help, fix)
