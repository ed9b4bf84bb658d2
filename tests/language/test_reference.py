"""The texts that people read are held to the program: their examples are compiled, their tables are computed.

An example is a fenced block marked `plan`. Words after it say how it is set (`day`: the lines of a day, and so on; see
`SETTINGS`), that it is saved for later ones (`file=club.plan`), or what it must report: `wrong` with at least one
error, `warns` with none, and the codes. Without codes nothing may be reported. A `csv` block under an example is what
comes out of it, in the columns of its header. A `console` block is typed and must print what stands there.
"""

from __future__ import annotations

import csv
import re
import shlex
from fractions import Fraction
from pathlib import Path
from textwrap import indent

import pytest

from run_command import run_command
from setwright import files, suggest
from setwright.check.figures import session_time
from setwright.check.measure import Measure
from setwright.check.measures import MEASURES
from setwright.cli import VERBS
from setwright.cli.templates import templates
from setwright.diagnostics.catalogue import every_code
from setwright.emphasis import placing
from setwright.expand import weeks as expanded
from setwright.link import (
    athletes,
    imports,
    lines,
    models,
    plans,
    progressions,
    rulesets,
    tracks,
    values,
    wishes,
)
from setwright.link import (
    library as linking,
)
from setwright.pipeline import EVERY_ATHLETE, compile, library
from setwright.plan import WEEKDAYS, Handling
from setwright.quantities import Unit, plain
from setwright.record import record
from setwright.render import load_files
from setwright.render.csv import COLUMNS, VOLUME_COLUMNS, rows
from setwright.render.keys import CAUTIONS, HARD_DAYS, MINOR, TEST
from setwright.rules import BoundUnit, Scope
from setwright.science import time
from setwright.science.effort import EFFORT_KEY
from setwright.science.repetitions import Model, share_of_best
from setwright.science.zones import ZONES
from setwright.syntax import parser
from setwright.syntax.builder import Builder
from setwright.syntax.building import base
from setwright.syntax.complaints import keyword_texts
from setwright.syntax.tables import line_parser

ROOT = Path(__file__).parents[2]
REFERENCE = (ROOT / "grammar" / "README.md").read_text(encoding="utf-8")
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
TEXTS = {"reference": REFERENCE, "readme": README}

_USES = "use stdlib.exercises\nuse stdlib.rules\n\n"
_BLOCK = (
    'plan "Example"\n  warm-up 40% x 8, 60% x 5, 75% x 3\n'
    "  block Example: 4 weeks\n    deload week 4: sets 50%\n"
)  # fmt: skip

# What stands before an example of each kind, and how far in its lines are set.
SETTINGS = {
    "day": (_USES + _BLOCK + "    day Mon\n", 6),
    "block": (_USES + _BLOCK, 4),
    "plan": (_USES + 'plan "Example"\n', 2),
    "athlete": (_USES + 'athlete "Example"\n', 2),
    "rules": (_USES + "rules example\n", 2),
}

_FENCE = re.compile(r"^```(\w+)([^\n]*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)


@record
class Example:
    """One example of a text: the words of its fence, its lines, and the table under it."""

    where: str
    words: tuple[str, ...]
    text: str
    table: str | None

    @property
    def codes(self) -> set[str]:
        """The codes it must report."""
        return {word for word in self.words if word.startswith("SW")}

    @property
    def file(self) -> str | None:
        """The name under which later examples can use it."""
        return next((word.removeprefix("file=") for word in self.words if word.startswith("file=")), None)

    @property
    def whole(self) -> str:
        """The file that is compiled."""
        head, depth = next((SETTINGS[word] for word in self.words if word in SETTINGS), ("", 0))
        return head + indent(self.text, " " * depth)


def examples() -> list[Example]:
    """Every example of the texts, in order."""
    found: list[Example] = []
    for name, text in TEXTS.items():
        for fence in _FENCE.finditer(text):
            language, words, body = fence.groups()
            line = text.count("\n", 0, fence.start()) + 1
            if language == "plan":
                found.append(Example(f"{name}:{line}", tuple(words.split()), body, None))
            elif language == "csv":
                last = found.pop()
                found.append(Example(last.where, last.words, last.text, body))
    return found


def squeezed(text: str) -> str:
    """The text with every stretch of blanks as one space, so that line breaks do not matter."""
    return " ".join(text.split())


def table_rows(heading: str, text: str = REFERENCE) -> list[list[str]]:
    """The cells of the table whose header row is `heading`."""
    _, _, rest = text.partition(f"\n{heading}\n")
    assert rest, heading
    body = rest.split("\n\n")[0].splitlines()[1:]
    return [[cell.strip() for cell in row.strip("|").split(" | ")] for row in body]


def ticked(text: str) -> list[str]:
    """What stands in backquotes."""
    return re.findall(r"`([^`]+)`", text)


# ---- the examples --------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A workspace that holds the examples with a file name."""
    made = tmp_path_factory.mktemp("reference")
    for example in examples():
        if example.file:
            (made / example.file).write_text(example.whole, encoding="utf-8")
    return made


@pytest.mark.parametrize("example", examples(), ids=lambda example: example.where)
def test_example(example: Example, folder: Path) -> None:
    path = str(folder / (example.file or "example.plan"))
    compiled = compile(path, athletes=(EVERY_ATHLETE,), root=str(folder), text=example.whole)
    told = [f"{found.span.line}: {found.code.number} {found.message}" for found in compiled.diagnostics]
    assert {found.code.number for found in compiled.diagnostics} == example.codes, told
    assert compiled.has_errors == ("wrong" in example.words), told
    assert bool(example.codes) == bool({"wrong", "warns"} & {*example.words})
    if example.table is not None:
        header, *body = csv.reader(example.table.splitlines())
        places = [COLUMNS.index(column) for column in header]
        assert [[row[place] for place in places] for one in compiled.compilations for row in rows(one.plan)] == body


def test_there_are_examples_of_every_kind() -> None:
    words = {word for example in examples() for word in example.words}
    assert {*SETTINGS, "wrong", "warns"} - {"rules"} <= words
    assert len(examples()) > 40


@pytest.mark.parametrize("shown", re.findall(r"^```console\n(.*?)^```$", README, re.MULTILINE | re.DOTALL))
def test_what_the_readme_types_prints_what_it_shows(
    shown: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _lay_out(tmp_path, monkeypatch)
    first, _, output = shown.partition("\n")
    program, *arguments = shlex.split(first.removeprefix("$ "))
    assert program == "setwright"
    assert run_command(*arguments).output == output


@pytest.mark.parametrize("line", re.findall(r"\bsetwright (?:build|check|volume) examples/.*", README))
def test_what_the_readme_does_with_the_examples_works(
    line: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _lay_out(tmp_path, monkeypatch)
    _, *arguments = shlex.split(line, comments=True)
    done = run_command(*arguments)
    assert done.exit_code == 0, done.output


def test_the_readme_excerpt_stands_in_the_example() -> None:
    excerpt = re.search(r"^```text\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)
    assert excerpt
    plans_ = [path.read_text(encoding="utf-8") for path in (ROOT / "examples").glob("*/*.plan")]
    for stretch in excerpt.group(1).split("...\n"):
        assert any(stretch.strip("\n") in text for text in plans_), stretch


def _lay_out(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The examples, and the files that the readme shows, in a folder of the test's own."""
    monkeypatch.chdir(folder)
    (folder / "examples").symlink_to(ROOT / "examples")
    for example in examples():
        if example.file and example.where.startswith("readme"):
            (folder / example.file).write_text(example.whole, encoding="utf-8")


# ---- the tables ----------------------------------------------------------------------------------


_BOUNDS = {
    BoundUnit.NUMBER: "a plain number",
    BoundUnit.RPE: "an effort, as `RPE 8`",
    BoundUnit.PERCENT: "a percent",
    BoundUnit.MINUTES: "minutes or seconds, as `75 min` or `90 s`",
    BoundUnit.HOURS: "hours, as `48 h`",
}


def measure_section(measure: Measure) -> str:
    """What the reference says of a measure."""
    return (
        f"#### `{measure.name}`\n\n{measure.about}\n\n*Bound:* {_BOUNDS[measure.unit]}. "
        f"*For:* {_subjects(measure)}. *Weeks:* {measure.weeks}\n\n"
        f"```plan rules\n{measure.example}\n```\n"
    )


def _subjects(measure: Measure) -> str:
    if measure.scopes == {Scope.RATIO}:
        return "two words with a colon"
    if measure.scopes == {Scope.PLAN}:
        return "the plan"
    patterns = ", movement patterns" if Scope.PATTERNS in measure.scopes else ""
    return f"the plan, muscles, groups, every muscle{patterns}"


@pytest.mark.parametrize("measure", MEASURES, ids=lambda measure: measure.name)
def test_every_measure_is_described(measure: Measure) -> None:
    assert squeezed(measure_section(measure)) in squeezed(REFERENCE)


def test_measures_stand_in_their_order() -> None:
    assert re.findall(r"^#### `([\w-]+)`$", REFERENCE, re.MULTILINE) == [measure.name for measure in MEASURES]


def test_the_table_of_zones() -> None:
    found = table_rows("| Zone of the best | Repetitions a set | Fewest | Optimal | Most |")
    assert found == [
        [str(zone), "{}-{}".format(*zone.reps_of_a_set), str(zone.fewest), str(zone.optimal), str(zone.most)]
        for zone in ZONES
    ]


def test_every_word_of_the_grammar_is_listed() -> None:
    listed = [word for row in table_rows("| Where | Words |") for word in ticked(row[1])]
    grammar = keyword_texts(line_parser(Builder()))
    assert len(listed) == len(set(listed))
    assert set(listed) == {*grammar.values(), *WEEKDAYS}


def test_every_shipped_template_is_listed() -> None:
    shipped = {
        one.name: [one.about, ", ".join(f"`{parameter}`" for parameter in one.parameters)]
        for one in templates(library())
    }
    rows_ = table_rows("| Template | What it is | Parameters |")
    assert {ticked(row[0])[0]: row[1:] for row in rows_} == shipped


def test_every_closed_set_of_words_is_listed() -> None:
    assert {ticked(row[0])[0]: ticked(row[1]) for row in table_rows("| After | Stands one of |")} == {
        "model": list(models.MODELS),
        "round": list(models.ROUNDING),
        "units": [unit.value for unit in Unit],
        "loads": [handling.value for handling in Handling],
        "count": list(rulesets.COUNTINGS),
    }


def test_every_code_that_is_named_exists() -> None:
    known = {code.number for code in every_code()}
    assert set(re.findall(r"\bSW\d{4}\b", REFERENCE + README + DEVELOPERS)) <= known


def test_shares_of_the_best() -> None:
    """The numbers are the program's own; tests/science holds them to what is published."""
    header = "| Model | Best from load w and r repetitions to failure | 1 | 3 | 5 | 7 | 10 |"
    found = {ticked(row[0])[0]: row[2:] for row in table_rows(header)}
    counts = [Fraction(count) for count in (1, 3, 5, 7, 10)]
    assert found == {model.value: [plain(share_of_best(model, count) * 100) for count in counts] for model in Model}


def test_times() -> None:
    found = {row[0]: int(row[1].removesuffix(" s")) for row in table_rows("| What | Lasts |")}
    assert found == {
        "a repetition without a tempo": time.REPETITION_S,
        "an `X` in a tempo": time.FASTEST_S,
        "a rest that nobody wrote": time.DEFAULT_REST_S,
        "changing over to the next movement": time.CHANGEOVER_S,
        "loading and rest after each warm-up set": session_time.WARM_UP_REST_S,
        "the pause inside a cluster that nobody wrote": session_time.CLUSTER_PAUSE_S,
        "a metre": session_time.SECONDS_PER_METRE,
        "`max`, as ten repetitions without a tempo": session_time.REPETITIONS_OF_MAX * time.REPETITION_S,
    }


def test_limits() -> None:
    found = {row[0]: int(re.sub(r"\D", "", row[1])) for row in table_rows("| What | At most |")}
    assert found == {
        "weeks of a block": lines.LONGEST_BLOCK,
        "weeks of a plan": lines.LONGEST_PLAN,
        "blocks of a plan": lines.LONGEST_PLAN,
        "rows of a plan's CSV and notes, in all weeks": expanded.MOST_ROWS,
        "rules of a plan, with those that it follows": plans.MOST_RULES,
        "rules of a progression": progressions.MOST_RULES,
        "days of a microcycle": plans.LONGEST_MICROCYCLE,
        "sets of a segment, rounds of a circuit": tracks.MOST_SETS,
        "sets a week that an `emphasis` adds or takes": wishes.MOST_WISHED,
        "sets that all of a plan's `emphasis` lines ask for, in all weeks": placing.MOST_PLACED,
        "repetitions of a set": tracks.MOST_REPS,
        "hours of a set or a rest": values.LONGEST_SET_S // 3600,
        "metres of a set": tracks.FARTHEST_M,
        "percent of a best": tracks.MOST_PERCENT,
        "kilograms": values.HEAVIEST["kg"],
        "pounds": values.HEAVIEST["lb"],
        "discs of one mass": athletes.MOST_DISCS,
        "masses of discs": athletes.MOST_KINDS,
        "dumbbells of one range": athletes.MOST_WEIGHTS,
        "characters of a line": parser.LONGEST_LINE,
        'characters of a word that gets a "Did you mean"': suggest.LONGEST,
        "unknown names that get one": linking.MOST_HELPED,
        "characters of a number": base.LARGEST_DIGITS,
        "megabytes of a file": files.LARGEST_FILE // 1_000_000,
        "files of a compilation": imports.MOST_FILES,
        "imports inside each other": imports.DEEPEST,
    }


def test_columns_stand_in_their_order() -> None:
    assert f"`{','.join(COLUMNS)}`" in squeezed(REFERENCE).replace(", ", ",")
    assert f"`{','.join(VOLUME_COLUMNS)}`" in REFERENCE
    assert f"`{','.join(load_files.COLUMNS)}`" in REFERENCE


def test_the_scale_of_effort_and_the_cautions_are_those_of_the_sheets() -> None:
    assert [tuple(row) for row in table_rows("| RPE | Means |")] == list(EFFORT_KEY)
    facts = {"athlete": "Lumi", "born": 2010, "days": "Chest on Monday and Tuesday"}
    for head, said in (*CAUTIONS, MINOR, HARD_DAYS, TEST):
        assert squeezed(f"- **{head}.** {said.format(**facts)}") in squeezed(REFERENCE)


def test_every_shipped_rule_set_is_named() -> None:
    names = {path.stem for path in (ROOT / "stdlib" / "rules").glob("*.plan")}
    line = next(line for line in REFERENCE.splitlines() if line.startswith("| `use stdlib.rules.strength`"))
    assert set(ticked(line.split("|")[2])) == names


# ---- the guides ----------------------------------------------------------------------------------


@pytest.mark.parametrize("verb", [verb.name for verb in VERBS])
def test_every_verb_is_in_the_readme(verb: str) -> None:
    assert f"`setwright {verb}" in README


@pytest.mark.parametrize("text", [README, DEVELOPERS, REFERENCE], ids=["readme", "developers", "reference"])
def test_paths_that_are_named_exist(text: str) -> None:
    homes = r"(?:compiler|grammar|stdlib|tests|examples|\.ci)/[\w./-]*"
    named = {path.rstrip(".") for path in re.findall(rf"[`(]({homes})[`)]", text)}
    assert named
    assert [path for path in sorted(named) if not (ROOT / path).exists()] == []


@pytest.mark.parametrize("text", [README, DEVELOPERS, REFERENCE], ids=["readme", "developers", "reference"])
def test_links_inside_a_text_lead_somewhere(text: str) -> None:
    headings = re.findall(r"^#+ (.*)$", _FENCE.sub("", text), re.MULTILINE)
    anchors = {re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-") for heading in headings}
    assert {target for target in re.findall(r"\]\(#([^)]*)\)", text) if target not in anchors} == set()


def test_the_contents_name_every_chapter() -> None:
    listed = re.findall(r"^(\d+)\. \[(.+)\]\(#(.+)\)$", REFERENCE, re.MULTILINE)
    chapters = re.findall(r"^## (\d+)\. (.+)$", REFERENCE, re.MULTILINE)
    assert [(number, title) for number, title, _ in listed] == chapters
    for number, title, anchor in listed:  # as code hosts make anchors of headings
        assert anchor == f"{number}-" + re.sub(r"[^a-z0-9 -]", "", title.lower()).replace(" ", "-")
