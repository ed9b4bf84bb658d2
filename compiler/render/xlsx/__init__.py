"""The plan as a workbook: typed cells, a sheet a week to write on, volume by formulas that follow what is changed.

Comes in: a plan, its promise and reports. Goes out: the bytes of an `.xlsx` file, the same for the same plan.
"""

from __future__ import annotations

from setwright.render import done
from setwright.render.material import Look, Material
from setwright.render.xlsx.book import Book
from setwright.render.xlsx.figures import write_movements, write_volume
from setwright.render.xlsx.overview import write_overview
from setwright.render.xlsx.rows import counted_week
from setwright.render.xlsx.week import write_week


def rendered(material: Material, look: Look) -> bytes:
    """The workbook: overview, volume, a sheet a week, and last the shares that the volume is counted by."""
    plan, language = material.plan, look.language
    arranged = done.arranged(material, language)
    book = Book(plan, look)
    overview, volume = book.add(language.text("Overview")), book.add(language.text("Volume"))
    title = language.text("Week {number}")
    pages = [book.add(title.format(number=week.number)) for week in plan.weeks]
    movements = book.add(language.text("Movements"))
    written = [
        write_week(book, page, week, paper, counted_week(week, plan, material.promise), material.outcomes)
        for page, week, paper in zip(pages, plan.weeks, arranged.weeks, strict=True)
    ]
    credits = write_movements(book, movements, material, written)
    write_volume(book, volume, material, written, credits)
    write_overview(book, overview, material, arranged, written)
    return book.closed()
