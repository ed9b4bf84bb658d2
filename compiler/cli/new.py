"""`setwright new`: a folder to start from: a plan, written out or made from a template, an athlete and a log."""

from __future__ import annotations

import os

import click

from setwright.cli.folder import write_new
from setwright.cli.names import slug
from setwright.cli.options import examples
from setwright.cli.starter import ATHLETE, LOG, made_from, written_out
from setwright.cli.terminal import put, tell
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible


@click.command(epilog=examples('setwright new "Harbour Spring" --from three-days-full-body'))
@click.argument("name", required=False)
@click.option("--from", "template", metavar="TEMPLATE", help="The template to make it from.")
@click.option("--list", "listing", is_flag=True, help="The templates there are, with their parameters.")
@click.option("--pack", is_flag=True, help="Start a pack called NAME: movements and rules to install and share.")
@click.option("-o", "--output", metavar="DIR", help="The folder to write; named for the plan unless you say.")
def command(name: str | None, template: str | None, listing: bool, pack: bool, output: str | None) -> None:
    """Start me off: a folder with a plan called NAME, an athlete and a log, commented, that compile.

    The plan is written out, or a few lines that make it from a template. With --pack the folder is a Python package
    whose movements and rules others can use. Nothing is ever overwritten.
    """
    if listing:
        put("\n".join(_listed()) + "\n")
        return
    if not name or not name.strip():
        raise click.UsageError("Name the plan, or ask for --list.")
    if pack and template:
        raise click.UsageError("A pack is not made from a template.")
    if visible(name) != name:
        raise Trouble("the name of a plan is one line of text that can be seen")
    if pack:
        _write_pack(name.strip(), output)
        return
    stem, folder = slug(name), output or slug(name)
    plan = f"{stem}.plan" if stem not in ("athlete", "log") else f"{stem}-plan.plan"
    text = _from(template, name.strip()) if template else written_out(name.strip())
    write_new(folder, {plan: text, "athlete.plan": ATHLETE, "log.plan": LOG})
    paths = [visible(os.path.join(folder, file)) for file in (plan, "athlete.plan", "log.plan")]
    for path in paths:
        tell(f"wrote {path}")
    tell(f"Now: setwright build {paths[0]} --athlete {paths[1]}")


def _write_pack(name: str, output: str | None) -> None:
    from setwright.cli.starter_pack import pack_files

    slugged = slug(name)
    texts, folder = pack_files(slugged), output or slugged
    write_new(folder, texts)
    for path in texts:
        tell(f"wrote {visible(os.path.join(folder, path))}")
    tell(f"Now: python -m pip install -e {visible(folder)}, and in a plan: use {slugged}.exercises")


def _listed() -> list[str]:
    """Each template with what it is for and, under it, what it takes."""
    from setwright.cli.templates import templates
    from setwright.pipeline import library

    return [
        line
        for template in templates(library())
        for line in (f"{template.name}: {template.about}", *(f"  {parameter}" for parameter in template.parameters))
    ]


def _from(template: str, name: str) -> str:
    from setwright.cli.templates import templates
    from setwright.pipeline import library

    known = {one.name: one for one in templates(library())}
    chosen = known.get(template.casefold())
    if chosen is None:
        from setwright.suggest import did_you_mean

        near = did_you_mean(template, known) or "`setwright new --list` lists them."
        raise Trouble(f"no template is called `{template}`. {near}")
    return made_from(chosen, name)
