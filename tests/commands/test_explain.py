"""`explain`: a page a code, by number or name."""

from __future__ import annotations

import pytest
from click.testing import Result

from run_command import run_command
from setwright.cli.explain import explanation
from setwright.diagnostics import Code, Severity
from setwright.diagnostics.catalogue import every_code


def explain(*arguments: str) -> Result:
    return run_command("explain", *arguments)


def test_a_page_has_the_text_and_both_examples() -> None:
    code = Code(
        "SW0999",
        "tab-again",
        Severity.ERROR,
        title="A tab",
        message="",
        text="One paragraph,\nin two lines.\n\nAnother.",
        failing=b"plan\n\tday \xff\n",
        mended="plan\n  day\n",
        files=(("b.plan", "exercise Squat\n"),),
    )
    assert explanation(code) == (
        "SW0999 tab-again (error)\n\n"
        "A tab\n\n"
        "One paragraph, in two lines.\n\n"
        "Another.\n\n"
        "This fails:\n\n"
        "    plan\n"
        "    \\tday \\xff\n\n"
        "Beside it, b.plan:\n\n"
        "    exercise Squat\n\n"
        "This is the same, mended:\n\n"
        "    plan\n"
        "      day\n"
    )


@pytest.mark.parametrize("asked", ["SW0106", "sw0106", "tab-indent", "Tab-Indent"])
def test_a_code_goes_by_its_number_and_its_name(asked: str) -> None:
    answer = explain(asked)
    assert answer.exit_code == 0
    assert answer.stdout.startswith("SW0106 tab-indent (error)\n")


def test_the_list_has_every_code_once() -> None:
    lines = explain("--list").stdout.splitlines()
    assert [line[:6] for line in lines] == [code.number for code in every_code()]


@pytest.mark.parametrize("code", every_code(), ids=lambda code: code.name)
def test_every_page_can_be_printed(code: Code) -> None:
    shown = explain(code.name).stdout
    assert shown.startswith(f"{code.number} {code.name} ({code.severity.value})\n\n{code.title}\n")
    assert max(len(line) for line in shown.splitlines()) <= 110
    assert shown.replace("\n", "").isprintable()


def test_a_near_miss_gets_a_suggestion() -> None:
    answer = explain("unkown-movement")
    assert answer.exit_code == 2
    assert "`unknown-movement`" in answer.stderr
