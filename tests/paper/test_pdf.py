"""The PDF, read by Poppler and pypdf: pages, bookmarks, tags, texts; nothing fetched, the same bytes.

Wants Poppler (`apt install poppler-utils`) and Pango, with which WeasyPrint sets text.
"""

from __future__ import annotations

import io
import re
import subprocess
import sys
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PdfReader

from setwright.pipeline import compile
from setwright.plan import Line, Plan
from setwright.record import replace
from setwright.render import pdf
from setwright.render.language import ENGLISH
from setwright.render.material import PLAIN, Look, Material
from setwright.render.sheet import sheet
from setwright.report.overview import overview
from setwright.report.volume import volume
from setwright.rules import Promise
from setwright.source import Source
from sheets import logged_plans
from sheets.sample_plans import BENCH, SPAN, count, hostile, rpe, small, work

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks"
WEEK = re.compile(r"\A(?:.*\n){0,2}\s*Week (\d+)\b.*week \d+ of \d+")
FOOT = re.compile(r"(\d+) / (\d+)\s*$")


def material(plan: Plan, promise: Promise = Promise()) -> Material:  # noqa: B008 (frozen)
    return Material(plan, volume(plan, promise), overview(plan), promise)


def read(plan: Plan, look: Look = PLAIN) -> PdfReader:
    return PdfReader(io.BytesIO(pdf.rendered(material(plan), look)))


def said(text: str) -> str:
    """Without spaces, where lines break and what stands between columns."""
    return re.sub(r"[\s\u00ad]+", "", text)


def whole(reader: PdfReader) -> str:
    return said("".join(page.extract_text() for page in reader.pages))


@pytest.fixture(scope="module")
def plan() -> Plan:
    made = compile(str(EXAMPLE / "harbour-twelve-weeks.plan"), athletes=(str(EXAMPLE / "runa.plan"),))
    (one,) = made.compilations
    return one.plan


@pytest.fixture(scope="module")
def file(plan: Plan, tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("paper") / "harbour.pdf"
    made.write_bytes(pdf.rendered(material(plan), PLAIN))
    return made


@pytest.fixture(scope="module")
def pages(file: Path) -> list[str]:
    return run("pdftotext", "-layout", str(file), "-").removesuffix("\f").split("\f")


def test_a4_with_title_author_language_and_tags(file: Path, plan: Plan) -> None:
    about = run("pdfinfo", str(file))
    assert "(A4)" in about
    assert re.search(r"Title:\s+Lanternquay Winter Twelve – Runa", about)
    assert re.search(rf"Author:\s+{plan.author}", about)
    assert re.search(r"Tagged:\s+yes", about)
    assert re.search(r"JavaScript:\s+no", about)
    assert PdfReader(file).trailer["/Root"]["/Lang"] == "en"


def test_each_week_starts_a_page_and_takes_two_at_most(pages: list[str]) -> None:
    weeks = [int(found[1]) if (found := WEEK.match(text)) else None for text in pages]
    assert [week for week in weeks if week is not None] == list(range(1, 13))
    first = weeks.index(1)
    assert first <= 4
    starts = [at for at, week in enumerate(weeks) if week is not None] + [len(pages)]
    assert all(later - start <= 2 for start, later in pairwise(starts))


def test_every_page_says_its_number_and_whose_it_is(pages: list[str]) -> None:
    assert [FOOT.search(text.rstrip()) and FOOT.search(text.rstrip()).groups() for text in pages] == [  # type: ignore[union-attr]
        (str(number), str(len(pages))) for number in range(1, len(pages) + 1)
    ]
    assert all("Lanternquay Winter Twelve" in text for text in pages)


def test_each_session_is_there_whole_on_one_page(pages: list[str], plan: Plan) -> None:
    arranged = sheet(plan, overview(plan), ENGLISH)
    flat = [said(text) for text in pages]
    week_of: list[int] = []
    for text in pages:
        found = WEEK.match(text)
        week_of.append(int(found[1]) if found else week_of[-1] if week_of else 0)
    for week in arranged.weeks:
        own = [text for text, number in zip(flat, week_of, strict=True) if number == week.number]
        for session in week.sessions:
            texts = [said(session.day + (session.label or "")), *(said(name) for name in stations(session.parts))]
            assert any(all(text in page for text in texts) for page in own), (week.number, session.day)


def stations(parts: tuple[object, ...]) -> Iterator[str]:
    # A name may wrap beside its dose, so its first word is looked for.
    for part in parts:
        for station in part.stations:  # type: ignore[attr-defined]
            yield station.name.split()[0]


def test_bookmarks_lead_to_weeks_and_sessions(file: Path, plan: Plan) -> None:
    reader = PdfReader(file)
    marks: list[tuple[str, list[str]]] = []
    for mark in reader.outline:
        if isinstance(mark, list):
            marks[-1] = (marks[-1][0], [str(one["/Title"]) for one in mark])
        else:
            marks.append((str(mark["/Title"]), []))
    weeks = [(title, below) for title, below in marks if title.startswith("Week ")]
    assert [title for title, _ in weeks] == [f"Week {number}" for number in range(1, 13)]
    assert [len(below) for _, below in weeks] == [len(week.sessions) for week in plan.weeks]
    assert weeks[0][1][0] == "Monday Squat"
    assert "Cautions" in dict(marks)
    first = next(mark for mark in reader.outline if not isinstance(mark, list) and mark["/Title"] == "Week 1")
    number = reader.get_destination_page_number(first)
    assert number is not None
    assert reader.pages[number].extract_text().startswith("Week 1")


def test_hostile_names_are_text() -> None:
    plan = hostile()
    reader = read(plan)
    text = whole(reader)
    assert reader.metadata is not None
    assert reader.metadata.title == f"{plan.name} – {plan.athlete}"
    assert reader.metadata.author == plan.author
    for name in (plan.name, plan.weeks[0].block, plan.weeks[0].sessions[0].lines[0].movement.name):
        assert said(name) in text
    assert not [note for page in reader.pages for note in page.get("/Annots", ()) if "/URI" in str(note.get_object())]


def test_long_names_stay_on_the_paper(tmp_path: Path) -> None:
    made = tmp_path / "hostile.pdf"
    made.write_bytes(pdf.rendered(material(hostile()), PLAIN))
    boxes = run("pdftotext", "-bbox", str(made), "-")
    assert max(float(edge) for edge in re.findall(r'<word [^>]*xMax="([\d.]+)"', boxes)) < 595.3  # points, A4
    assert min(float(edge) for edge in re.findall(r'<word xMin="(-?[\d.]+)"', boxes)) > 0


def test_a_session_longer_than_a_page_goes_on_over_the_next_ones() -> None:
    lines = tuple(
        Line(replace(BENCH, name=f"Press Nr{number}"), (work(3, count(5), rpe(7)),), SPAN) for number in range(1, 121)
    )
    plan = small()
    session = replace(plan.weeks[0].sessions[0], lines=lines)
    reader = read(replace(plan, weeks=(replace(plan.weeks[0], sessions=(session,)),)))
    text = whole(reader)
    assert all(f"Nr{number}" in text for number in (1, 60, 120))


def test_nothing_is_fetched_from_disk_or_network(tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("not for the paper")
    picture = tmp_path / "picture.svg"
    picture.write_text('<svg xmlns="http://www.w3.org/2000/svg"><text y="20">drawn secret</text></svg>')
    text = f"""{{% extends "page.html.j2" %}}
{{% block foot %}}<img src="{picture.as_uri()}" alt="left out"><a rel="attachment" href="{secret.as_uri()}">s</a>
<img src="http://192.0.2.1/x.png" alt="nor this"><object data="{picture.as_uri()}"></object>{{% endblock %}}"""
    reader = read(small(), Look(template=Source("club.html.j2", text)))
    shown = whole(reader)
    assert "leftout" in shown
    assert "drawnsecret" not in shown
    assert not list(reader.attachments)


def test_the_same_plan_makes_the_same_bytes(tmp_path: Path) -> None:
    script = (
        "import sys; from setwright.render import pdf; from paper.test_pdf import material, PLAIN, small;"
        "sys.stdout.buffer.write(pdf.rendered(material(small()), PLAIN))"
    )
    made = [
        subprocess.run(
            [sys.executable, "-c", script],
            capture_output=True,
            check=True,
            cwd=Path(__file__).parents[1],
            env={"PYTHONHASHSEED": seed, "PATH": "/usr/bin:/bin", "HOME": str(tmp_path)},
        ).stdout
        for seed in ("1", "2")
    ]
    assert made[0] == made[1]
    assert made[0].startswith(b"%PDF-1.7")


def test_a_drawing_holds_all_it_needs() -> None:
    page = '<svg><g id="lift-weeks"><path/></g></svg><svg><use href="#lift-weeks"/></svg>'
    made = pdf.drawn(page)
    assert made.count("<style>") == 2
    assert made.count("<path/>") == 2
    assert "<use" not in made


def run(program: str, *arguments: str) -> str:
    done = subprocess.run([program, *arguments], capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_what_was_done_stands_beside_what_was_asked(tmp_path: Path) -> None:
    made = logged_plans.material(tmp_path)
    text = whole(PdfReader(io.BytesIO(pdf.rendered(made, PLAIN))))
    for shown in ("80 \u00d7 4 @ 8.5", "Done on Thursday, 7 January.", "Not done.", "4 of 5 sessions"):
        assert said(shown) in text
