"""The volume by formulas: sets of each movement a week from the sheets of the weeks, and from those the muscles' sets.

Comes in: the written weeks, the volume and the promise. Goes out: two sheets, each formula with its value beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from setwright.plan import Movement, Muscle
from setwright.quantities import plain
from setwright.record import record
from setwright.render import words
from setwright.render.language import Language
from setwright.render.material import Material
from setwright.render.xlsx.book import ASIDE, STRONG, TITLE, TOP, Book, Page, Style
from setwright.render.xlsx.week import Column, WrittenWeek
from setwright.science.counting import Counting

HEAD_ROW: Final = 3
FIRST_ROW: Final = 4
WIDE: Final = 16  # weeks from which on a table is printed across

FIGURE: Final[Style] = {"num_format": "0.##;-0.##;\u2013", "align": "center"}
SHARE: Final[Style] = {"num_format": "0.##;;", "align": "center"}
MASS: Final[Style] = {"num_format": "#,##0;-#,##0;\u2013", "align": "center"}
NAMED: Final[Style] = {"bold": False, "text_wrap": True, "valign": "top"}


@record
class Credits:
    """Where the sheet of movements holds the shares and sets of all movements."""

    page: Page
    movements: int
    muscles: tuple[Muscle, ...]

    def share(self, place: int) -> str:
        """The shares that the movements give a muscle."""
        return self._column(1 + place)

    def sets(self, place: int) -> str:
        """The sets of the movements in a week."""
        return self._column(1 + len(self.muscles) + place)

    def _column(self, column: int) -> str:
        letter = column_letter(column)
        return f"{self.page.reference}${letter}${FIRST_ROW + 1}:${letter}${FIRST_ROW + self.movements}"


def write_movements(book: Book, page: Page, material: Material, written: Sequence[WrittenWeek]) -> Credits:
    """Each movement once: what a set of it counts for each muscle, and its counted sets of each week."""
    language = book.language
    movements = _movements(written)
    muscles = material.volume.muscles if material.volume.rows else ()
    page.put(0, 0, page.name, TITLE)
    page.put(1, 0, language.text("What one set counts for each muscle, and the counted sets of each week."), ASIDE)
    page.put(HEAD_ROW, 0, language.text("Movement"), TOP)
    for at, muscle in enumerate(muscles):
        page.put(HEAD_ROW, 1 + at, language.text(muscle.title), TOP)
    for at, week in enumerate(written):
        page.link(HEAD_ROW, 1 + len(muscles) + at, week.page, TOP)
    for row, movement in enumerate(movements, FIRST_ROW):
        shares = dict(movement.works)
        page.put(row, 0, movement.name, NAMED)
        for at, muscle in enumerate(muscles):
            page.put(row, 1 + at, shares.get(muscle.word, Fraction(0)), SHARE)
        for at, week in enumerate(written):
            # Text in a cell of sets is passed over; a product of the columns would end in an error there.
            formula = f"=SUMPRODUCT(--({week.column(Column.MOVEMENT)}=$A{row + 1}),{_counted(week)})"
            page.formula(row, 1 + len(muscles) + at, formula, _sets_of(movement, week), FIGURE)
    page.widths([30, *[9] * (len(muscles) + len(written))])
    page.freeze(FIRST_ROW, 1)
    page.paper(len(muscles) + len(written), FIRST_ROW + len(movements), head=HEAD_ROW, landscape=True)
    return Credits(page, len(movements), muscles)


def write_volume(book: Book, page: Page, material: Material, written: Sequence[WrittenWeek], credits: Credits) -> None:
    """Tables with weeks for columns: sets of each muscle in three ways of counting, then what was lifted."""
    language = book.language
    page.put(0, 0, page.name, TITLE)
    page.put(1, 0, _counting(material, language), {**ASIDE, "text_wrap": False})
    page.put(HEAD_ROW, 0, "", TOP)
    for at, week in enumerate(written):
        page.link(HEAD_ROW, 1 + at, week.page, TOP)
    row = FIRST_ROW
    if credits.movements and credits.muscles:
        for counting in Counting:
            row = _muscles(book, page, material, written, credits, counting, row) + 1
    row = _lifted(book, page, written, row)
    page.widths([34, *[9] * len(written)])
    page.freeze(FIRST_ROW, 1)
    page.paper(max(1, len(written)), row, head=HEAD_ROW, landscape=len(written) > WIDE)


def column_letter(column: int) -> str:
    """The letters of a column, 0 for `A`."""
    letters = ""
    while column >= 0:
        letters = chr(ord("A") + column % 26) + letters
        column = column // 26 - 1
    return letters


def _muscles(
    book: Book,
    page: Page,
    material: Material,
    written: Sequence[WrittenWeek],
    credits: Credits,
    counting: Counting,
    row: int,
) -> int:
    language = book.language
    title = _title(counting, language)
    if counting is material.promise.counting:
        title += " \u00b7 " + language.text("the rules of this plan go by these")
    page.put(row, 0, title, STRONG)
    scale = "" if material.plan.microcycle == 7 else f"*7/{material.plan.microcycle}"
    for place, muscle in enumerate(credits.muscles):
        row += 1
        page.put(row, 0, language.text(muscle.title), NAMED)
        for at, week in enumerate(written):
            formula = f"=SUMPRODUCT({credits.sets(at)},{_credit(credits.share(place), counting)}){scale}"
            value = material.volume.of(week.week.number, muscle.word).sets(counting)
            page.formula(row, 1 + at, formula, value, FIGURE)
    page.shaded((row - len(credits.muscles) + 1, 1, row, max(1, len(written))))
    return row + 1


def _lifted(book: Book, page: Page, written: Sequence[WrittenWeek], row: int) -> int:
    language = book.language
    page.put(
        row, 0, language.text("Sets \u00d7 repetitions \u00d7 load, {unit}").format(unit=book.plan.unit.value), STRONG
    )
    asked, done = language.text("as asked, where the load is known"), language.text("as done")
    for said, column in ((asked, Column.ASKED), (done, Column.DONE)):
        row += 1
        page.put(row, 0, said, NAMED)
        for at, week in enumerate(written):
            asks = (each.volume_load or Fraction(0) for each in week.rows)
            value = sum(asks, Fraction(0)) if column is Column.ASKED else Fraction(0)
            page.formula(row, 1 + at, f"=SUM({week.column(column)})", value, MASS)
    return row


def _counted(week: WrittenWeek) -> str:
    return f"{week.column(Column.SETS)},{week.column(Column.COUNTS)}"


def _credit(shares: str, counting: Counting) -> str:
    match counting:
        case Counting.DIRECT:
            return f"--({shares}>=1)"
        case Counting.FRACTIONAL:
            return shares
        case Counting.TOTAL:
            return f"--({shares}>0)"


def _title(counting: Counting, language: Language) -> str:
    match counting:
        case Counting.DIRECT:
            return language.text("Direct sets: of prime movers only")
        case Counting.FRACTIONAL:
            return language.text("Fractional sets: each by its share")
        case Counting.TOTAL:
            return language.text("All sets that work the muscle")


def _counting(material: Material, language: Language) -> str:
    """Which sets count at all, and for how many days the figures are."""
    promise, plan = material.promise, material.plan
    said = [language.text("These figures follow the sets on the sheets of the weeks; warm-ups are left out.")]
    if promise.from_rpe is not None:
        from_rpe = f"RPE{words.NO_BREAK}{plain(promise.from_rpe)}"
        said.append(language.text("Sets stated easier than {effort} are not counted.").format(effort=from_rpe))
    if promise.required_only:
        said.append(language.text("Optional movements are not counted."))
    if plan.microcycle != 7:
        said.append(language.text("A round has {days} days; sets are per 7 days.").format(days=plan.microcycle))
    return " ".join(said)


def _movements(written: Sequence[WrittenWeek]) -> tuple[Movement, ...]:
    """Each movement once, in the order in which the plan first uses it."""
    found: dict[str, Movement] = {}
    for row in (row for week in written for row in week.rows):
        found.setdefault(row.line.movement.name, row.line.movement)
    return tuple(found.values())


def _sets_of(movement: Movement, week: WrittenWeek) -> int:
    return sum(row.segment.sets for row in week.rows if row.counts and row.line.movement.name == movement.name)
