"""A club's own template: what it is given, what it may not do, where it fails, and what a browser lets the page do."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest

from setwright.diagnostics import Diagnostic
from setwright.pipeline import compile
from setwright.plan import Plan
from setwright.record import field_names
from setwright.render import front, sheet, tables
from setwright.render.html import given, page
from setwright.render.html.accent import DARK, LIGHT, accent
from setwright.render.html.club import cautions_left_out
from setwright.render.html.finished import Finished, source_hash
from setwright.render.look import look as look_of
from setwright.render.material import Look, Material
from setwright.render.outputs import FaultyTemplateError
from setwright.science.contrast import contrast
from setwright.source import Source
from sheets.sample_plans import hostile, long, reported, small

ROOT = Path(__file__).parents[2]
CLUB = ROOT / "examples" / "rowing-club-library"
REFERENCE = (ROOT / "grammar" / "README.md").read_text(encoding="utf-8")
HEAD = '<!DOCTYPE html>\n<html lang="en">\n<head>\n<title>x</title>\n</head>\n<body>\n'
EACH_SESSION = (
    "{{% for week in sheet.weeks %}}{week}{{% for one in week.sessions %}}{session}{{% endfor %}}{{% endfor %}}"
)


def material(plan: Plan) -> Material:
    made = reported(plan)
    return Material(made.plan, made.volume, made.overview)


def look(template: str) -> Look:
    return Look(club="Tarnfell", template=Source("club.html.j2", template))


def made(template: str, plan: Plan | None = None) -> str:
    return page(material(plan or small()), look(template))


def fault(template: str) -> Diagnostic:
    with pytest.raises(FaultyTemplateError) as raised:
        made(template)
    return raised.value.diagnostic


def policy(text: str) -> str:
    (said,) = re.findall(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">', text)
    return unescape(said)


def test_the_shipped_page_can_be_extended() -> None:
    """All of it runs in the sandbox, to the same page but for where its policy stands."""
    extended = made('{% extends "page.html.j2" %}')
    shipped = page(material(small()), Look(club="Tarnfell"))
    (meta,) = re.findall(r'<meta http-equiv="Content-Security-Policy" .*\n', shipped)
    assert policy(extended) == policy(shipped)
    assert extended.replace(meta, "", 1) == shipped.replace(meta, "", 1)


def test_the_limits_leave_room_for_two_years() -> None:
    assert made('{% extends "page.html.j2" %}', long(104)).count('<section class="week') == 104


def test_blocks_of_the_shipped_page_can_be_written_anew() -> None:
    text = made('{% extends "page.html.j2" %}{% block foot %}<p>{{ look.club }}</p>{% endblock %}')
    assert "<p>Tarnfell</p>" in text


def test_names_are_escaped() -> None:
    movements = "{% for part in one.parts %}{{ part.stations[0].name }}{% endfor %}"
    text = made(HEAD + "{{ sheet.name }}" + EACH_SESSION.format(week="", session=movements), hostile())
    assert "<script" not in text
    assert "&lt;" in text


@pytest.mark.parametrize(
    "template",
    [
        "{{ sheet.__class__.__mro__ }}",
        '{{ sheet["__class__"] }}',
        '{{ sheet|attr("__class__") }}',
        '{{ sheet|map(attribute="__class__")|list }}',
        '{{ [sheet]|map(attribute="__class__.__mro__")|list }}',
        '{{ "{0.__class__.__init__.__globals__}".format(sheet) }}',
        '{{ "{a[0]}".format(a=sheet.weeks) }}',
        "{{ _.__globals__ }}",
        "{{ _.__self__.__class__ }}",
        "{{ cycler.__init__.__globals__.os }}",
        "{{ self._TemplateReference__context }}",
        "{{ language._locale }}",
        "{{ sheet.replace }}",
        '{{ open("/etc/passwd").read() }}',
        '{% include "/etc/passwd" %}',
        '{% include "../../../../../etc/passwd" %}',
        '{% extends "/etc/passwd" %}',
        '{% import "os" as os %}{{ os.environ }}',
        "{% do sheet.weeks.append(1) %}",
        "{{ sheet }}",
        "{{ sheet.weeks }}",
        "{{ sheet.name|safe }}",
    ],
)
def test_nothing_but_what_is_given(template: str) -> None:
    found = fault(HEAD + template)
    assert found.code.name in ("template-stops", "template-unreadable")
    assert found.span.line == 7


@pytest.mark.parametrize(
    "template",
    [
        "{% for x in range(10**9) %}{% endfor %}",
        "{% for x in range(99999) %}{% for y in range(99999) %}{% endfor %}{% endfor %}",
        "{% for x in range(99999) %}{{ 'x' * 9999 }}{% endfor %}",
        "{% macro m() %}{% for x in range(9999) %}{{ 'x' * 99999 }}{% endfor %}{% endmacro %}{{ m() }}",
        "{% set out %}{% for x in range(9999) %}{{ 'x' * 99999 }}{% endfor %}{% endset %}",
        "{% for x in range(99999) %}" + "x" * 1000 + "{% endfor %}",
        "{{ 'x' * 10**9 }}",
        "{{ [1] * 10**9 }}",
        "{{ 10 ** 10 ** 10 }}",
        "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}",
        "{% macro m(n) %}{% if n %}{{ m(n - 1) }}{{ m(n - 1) }}{% endif %}{% endmacro %}{{ m(60) }}",
        "{% set ns = namespace(x='xx') %}{% for i in range(99) %}{% set ns.x = ns.x ~ ns.x %}{% endfor %}",
        "{% set ns = namespace(x='xx') %}{% for i in range(99) %}{% set ns.x = ns.x + ns.x %}{% endfor %}",
        "{% set ns = namespace(x=[1]) %}{% for i in range(99) %}{% set ns.x = ns.x + ns.x %}{% endfor %}",
        "{% set ns = namespace(x=1) %}{% for i in range(99) %}{% set ns.x = [ns.x, ns.x] %}{% endfor %}",
        "{% set ns = namespace(x=[1]) %}{% for i in range(99) %}{% set ns.x = dict(a=ns.x, b=ns.x) %}{% endfor %}",
        "{% for x in [[1]] recursive %}{{ loop([x, x]) }}{% endfor %}",
        "{{ [1]|batch(10**9, 0)|list }}",
        "{{ " + "(" * 900 + "1" + ")" * 900 + " }}",
    ],
)  # fmt: skip
def test_limits(template: str) -> None:
    assert fault(HEAD + template).code.name == "template-limit"


@pytest.mark.parametrize(
    "template",
    [
        "{{ 'x'.ljust(10**9) }}",
        "{{ '{:>1000000000}'.format(1) }}",
        "{{ '%1000000000d' % 1 }}",
        "{{ 'x'|center(10**9) }}",
        "{{ (1).to_bytes(10**9) }}",
        "{{ lipsum(10**9) }}",
        "{{ 1 / 0 }}",
        "{% set look.club = 'x' %}",
    ],
)
def test_what_cannot_be_done(template: str) -> None:
    assert fault(HEAD + template).code.name in ("template-stops", "template-unreadable")


def test_an_error_is_told_at_its_line() -> None:
    found = fault(HEAD + '{% include "cautions.html.j2" %}\n<p>{{ sheet.nmae }}</p>\n')
    assert str(found.span) == "club.html.j2:8:1"
    assert found.message == "the template stops here: a Sheet has no `nmae`. Did you mean `name`"
    found = fault(HEAD + "\n{% if %}")
    assert (str(found.span), found.code.name) == ("club.html.j2:8:1", "template-unreadable")


@pytest.mark.parametrize(
    "text",
    [
        "<h1>x</h1>",
        '<html onclick="x"><head></head>',
        '<!DOCTYPE html><html lang="en" onclick="x"><head></head>',
        "<!DOCTYPE html><html><script>x</script><head></head>",
        HEAD + "<script>alert(1)</script>",
        HEAD + '<meta http-equiv="refresh" content="0; url=http://pier.example">',
        HEAD + '<link rel="preconnect" href="http://pier.example">',
    ],
)
def test_pages_that_are_no_sheet(text: str) -> None:
    assert fault(text).code.name == "template-page"


def test_the_policy_lets_the_pages_own_styles_through_and_nothing_more() -> None:
    text = made(HEAD.replace("<title>", "<style>b { color: red }</style><style>i { color: blue }</style><title>"))
    assert text.startswith('<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta http-equiv="Content-Security-Policy"')
    hashes = [source_hash("b { color: red }"), source_hash("i { color: blue }")]
    assert Finished(text).styles == ["b { color: red }", "i { color: blue }"]
    parts = dict(part.strip().split(" ", 1) for part in policy(text).split(";") if part.strip())
    assert parts["style-src"].split() == hashes
    assert parts["default-src"] == "'none'"
    assert parts["img-src"] == "data:"
    assert "style-src 'none'" in policy(made(HEAD))


def test_cautions_that_are_left_out_are_told() -> None:
    of = material(small())
    without = look(HEAD)
    assert without.template is not None
    (told,) = cautions_left_out(without.template, page(of, without), of, without)
    assert told.severity.value == "warning"
    cautions = "{{% for head, said in {of}.cautions %}}{{{{ said }}}}{{% endfor %}}"
    each = EACH_SESSION.format(week=cautions.format(of="week"), session=cautions.format(of="one"))
    kept = look(HEAD + cautions.format(of="sheet") + each)
    assert kept.template is not None
    assert list(cautions_left_out(kept.template, page(of, kept), of, kept)) == []


def test_the_accent_knows_the_papers_of_the_style() -> None:
    style = (ROOT / "compiler" / "render" / "html" / "style.css").read_text(encoding="utf-8")
    for name, at in (("paper", 0), ("tint", 1)):
        found = re.findall(rf"--{name}: (#\w+)", style)[:2]
        assert [re.sub(r"^#(\w)(\w)(\w)$", r"#\1\1\2\2\3\3", one) for one in found] == [
            LIGHT[at],
            DARK[at],
        ]
    for colour in ("#ffff00", "#000000", "#ffffff", "#7a1f3d"):
        light, dark = re.findall(r"--accent:(#\w{6})", accent(colour))
        assert min(contrast(light, paper) for paper in LIGHT) >= 4.5
        assert min(contrast(dark, paper) for paper in DARK) >= 4.5


def test_the_example_of_a_club() -> None:
    compiled = compile(str(CLUB / "rowing-club-library.plan"), athletes=(str(CLUB / "maro.plan"),))
    from setwright.files import Files

    problems: list[Diagnostic] = []
    chosen = look_of(Files(CLUB), {"template": str(CLUB / "boathouse-wall.html.j2")}, problems)
    assert (problems, chosen.club, chosen.colour) == ([], "Tarnfell Rowing Club", "#7a1f3d")
    of = material(compiled.compilations[0].plan)
    text = page(of, chosen)
    assert chosen.template is not None
    assert list(cautions_left_out(chosen.template, text, of, chosen)) == []
    assert text.count("<section>") == 7
    assert "Slide Squat</bdi>: 4\u00a0×\u00a06 @ 72.5%, 87.5\u00a0kg" in text


# ---- the reference ---------------------------------------------------------------------------------


def chapter() -> str:
    return REFERENCE.partition("## 22. Sheets of your own")[2].partition("\n## ")[0]


def table(head: str) -> dict[str, list[str]]:
    """Rows of a table of the chapter: what stands in the first column, and the words in backticks of the second."""
    _, _, rest = chapter().partition(f"| {head} |")
    rows = rest.partition("\n\n")[0].splitlines()[2:]
    cells = [[cell.strip() for cell in row.strip("|").split("|")] for row in rows]
    return {row[0].strip("`"): re.findall(r"`(\w+)`", row[1]) for row in cells}


RECORDS = (
    *(sheet.Sheet, sheet.BlockSheet, sheet.WeekMark, sheet.WeekSheet, sheet.SessionSheet, sheet.Part, sheet.Station),
    *(sheet.Row, sheet.Disc, sheet.Remark, sheet.Reason, front.Fact, front.Entry),
    *(tables.Grid, tables.Head, tables.Record, tables.Cell, Look),
)


def test_the_reference_names_every_field_of_what_a_template_is_given() -> None:
    assert table("Of a") == {record.__name__: list(field_names(record)) for record in RECORDS}


def test_the_reference_names_everything_a_template_is_given() -> None:
    assert set(table("Name")) == {*given(material(small()), Look()), "language", "_"}


def test_the_reference_names_the_blocks_of_the_page() -> None:
    source = (ROOT / "compiler" / "render" / "html" / "page.html.j2").read_text(encoding="utf-8")
    said = re.search(r"blocks of the page are\s+(.*?)\.", chapter(), re.DOTALL)
    assert said
    assert re.findall(r"`(\w+)`", said[1]) == re.findall(r"{% block (\w+) %}", source)
