"""What every phase reports with: a code from the catalogue, a place, and facts put into its message.

Comes in: spans and facts. Goes out: `Diagnostic`, which the printers and the editor read.
"""

from __future__ import annotations

from enum import Enum
from unicodedata import normalize

from setwright.record import record
from setwright.source import Span
from setwright.suggest import Suggestion


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

    @property
    def fixes(self) -> tuple[Fix, ...]:
        """Every edit that may be the one, best first: the fix, or one for each name that may have been meant."""
        return (self.fix,) if self.fix is not None else fixes_of(self.help, self.span)


def fixes_of(help: str | None, span: Span) -> tuple[Fix, ...]:
    """What a suggestion would put under the span, where that is all of the word it speaks of."""
    if not isinstance(help, Suggestion):
        return ()
    written = span.text
    is_quoted = written[:1] == '"'
    if normalize("NFC", written.strip('"')) != help.word:
        return ()
    return tuple(Fix(span, f'"{name}"' if is_quoted else name) for name in help.names)


@record
class Code:
    """A kind of diagnostic: its stable number and name, and everything `explain` prints.

    `message` is a format string for one line; `failing` is a plan (or several files, see
    `files`) that provokes the code, `mended` the same one put right. `file` is the name
    that they stand under: a plan's, or that of what dresses the sheets.
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
    file: str = "example.plan"

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
        """This code found at `span`; `facts` fill the message.

        Help that names one thing that was meant is a fix, too.
        """
        fixes = fixes_of(help, span) if fix is None else (fix,)
        only = fixes[0] if len(fixes) == 1 else None
        return Diagnostic(self, severity or self.severity, self.message.format(**facts), span, related, help, only)
