"""What every output is made from, and how it is dressed. Data only."""

from __future__ import annotations

from setwright.plan import Plan
from setwright.record import record
from setwright.render.language import ENGLISH, Language
from setwright.report.outcomes import Outcomes
from setwright.report.overview import WeekSummary
from setwright.report.targets import Targets
from setwright.report.volume import Volume
from setwright.rules import Promise
from setwright.source import Source


@record
class Material:
    """One plan, fitted to one athlete or to none, with its promise and the reports that its sheets print.

    `plan` and the reports may hold some of the weeks only. `targets` None means those of `plan` itself. `outcomes` is
    what was done, where a log is to be printed; it speaks of the whole plan.
    """

    plan: Plan
    volume: Volume
    overview: tuple[WeekSummary, ...]
    promise: Promise = Promise()
    targets: Targets | None = None
    outcomes: Outcomes | None = None


@record
class Look:
    """A club's own dress of the sheets.

    `logo` is a `data:` address, `colour` is `#rrggbb`, `template` a template for the page. `why` asks for the reasons
    of the numbers.
    """

    language: Language = ENGLISH
    club: str | None = None
    logo: str | None = None
    colour: str | None = None
    template: Source | None = None
    why: bool = False


PLAIN = Look()
