"""`setwright next`: today's or the next session alone."""

from __future__ import annotations

from datetime import date, datetime
from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.dress import look_or_exit
from setwright.cli.options import EXAMPLE, athlete_option, day, examples, log_option, on_option, root_option
from setwright.cli.terminal import put, tell
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.pipeline import Compilation
    from setwright.render.material import Look
    from setwright.report.coming import Coming

FORMATS = ("text", "md", "html")


@click.command(
    epilog=examples(
        f"setwright next {EXAMPLE} --on 2027-01-05",
        f"setwright next {EXAMPLE} --athlete examples/harbour-twelve-weeks/runa.plan --session 7",
    )
)
@click.argument("file", type=click.Path())
@athlete_option
@log_option
@on_option
@click.option("--session", "number", type=click.IntRange(1), metavar="N", help="The Nth session of the plan instead.")
@click.option("--format", "form", type=click.Choice(FORMATS), default="text", show_default=True)
@click.option("--language", metavar="TAG", help="The language it is shown in; English by itself.")
@root_option
def command(
    file: str,
    athletes: tuple[str, ...],
    logs: tuple[str, ...],
    on: datetime | None,
    number: int | None,
    form: str,
    language: str | None,
    root: str | None,
) -> None:
    """What do I do today? The session after the last one in the log; without a log, the first from today on.

    A plan without dates and without a log begins at its first session. HTML is one page, as a sheet's session looks.
    """
    today = day(on)
    made = compile_or_exit(file, athletes, root, tell_broken_rules=False, logs=logs, on=today)
    if form == "html" and len(made) > 1:
        raise Trouble(f"`--format html` is one page, and these are {len(made)} plans: name one --athlete")
    look = look_or_exit(file, root, {"language": language})
    texts = [_text(one, number, form, today, look) for one in made]
    put("\n".join(text for text in texts if text))


def _text(one: Compilation, number: int | None, form: str, today: date, look: Look) -> str:
    from setwright.render.gathered import gathered
    from setwright.render.next_session import over, session_text

    coming = _coming(one, number, today)
    if coming is not None:
        return session_text(form, gathered(one.plan, one.promise), coming, today, look)
    said = over(one.plan, look.language)
    if form == "html":  # a page that somebody redirects into a file would say nothing of it
        tell(said)
        return ""
    return said + "\n"


def _coming(one: Compilation, number: int | None, today: date) -> Coming | None:
    from setwright.report.coming import NoSuchSessionError, coming, session_at

    if number is None:
        return coming(one.plan, one.log, today)
    try:
        return session_at(one.plan, number)
    except NoSuchSessionError as missing:
        raise Trouble(str(missing)) from missing
