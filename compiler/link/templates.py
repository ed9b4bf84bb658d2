"""A plan `from` a template: parameters bound, the template's lines joined with the plan's own.

Comes in: a plan's statement. Goes out: its lines as if they had been written in the plan, and the template's blocks as
models that the plan's blocks are `like`, so that the plan edits them with the same lines as any inherited block.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import names
from setwright.link.missing import missing_use
from setwright.link.parameters import bound_parameters, substituted
from setwright.record import record, replace
from setwright.source import Span
from setwright.suggest import did_you_mean
from setwright.syntax import nodes as n
from setwright.syntax.structure import REPEATED, kind_of

if TYPE_CHECKING:
    from setwright.link.library import Library

Problems = list[Diagnostic]


@record
class Lines:
    """What a plan says in all: its lines, and the blocks of its template that some of them are `like`."""

    body: tuple[n.Statement, ...]
    models: tuple[n.Statement, ...] = ()
    template: n.Statement | None = None


def plan_lines(statement: n.Statement, library: Library, problems: Problems) -> Lines | None:
    """The plan's lines; None where its template cannot be used (after saying why)."""
    head = statement.node
    assert isinstance(head, n.Head)
    if head.source is None:
        return Lines(statement.body)
    declared = library.declared(library.templates, head.source)
    if declared is None:
        help_, fix = library.near_declared(library.templates, head.source), None
        if help_ is None:
            help_, fix = missing_use("templates", head.source)
        problems.append(names.UNKNOWN_TEMPLATE.at(head.source.span, name=head.source.text, help=help_, fix=fix))
        return None
    template = library.statement(declared)
    assert isinstance(template.node, n.Head)
    bindings = bound_parameters(template.node, head.source, head.arguments, library.reader.words, problems)
    if bindings is None:
        return None
    body = tuple(substituted(line, bindings, problems) for line in template.body)
    return replace(_joined(body, statement.body, head.source, problems), template=template)


def name_the_call(head: n.Head, lines: Lines, problems: Problems, first: int) -> None:
    """Problems found in the template's lines (from `first` on) also show the plan that brought them about."""
    if lines.template is None or head.source is None or head.source.span == head.name.span:
        return  # no template, or one that is checked by itself
    top, last = lines.template.node.span, _last_line(lines.template)
    made = Related(head.source.span, f'plan "{head.name.text}" is made from it here')
    given = {argument.name.text: argument for argument in head.arguments}
    for index, problem in enumerate(problems[first:], start=first):
        inside = problem.span.source == top.source and top.line <= problem.span.line <= last
        if inside and all(related.span != made.span for related in problem.related):
            argument = next((one for one in given.values() if _is_use(problem.span.text, one.name.text)), None)
            if argument is None or argument.value is None:
                problems[index] = replace(problem, related=(*problem.related, made))
            elif problem.code is names.PARAMETER_OUTSIDE_TEMPLATE:  # of the template's line, whatever the value is
                given_here = Related(argument.span, f"`{argument.name.text}` is given here")
                problems[index] = replace(problem, related=(*problem.related, given_here))
            else:
                problems[index] = _at_the_call(problem, argument.name.text, argument.value.span)


def _is_use(text: str, word: str) -> bool:
    """True for a parameter's word in the template, with a unit or a sign that stands beside it."""
    return re.fullmatch(rf"(?:RPE\s+)?{re.escape(word)}(?:\s*(?:%|/side|[A-Za-z]+))*", text) is not None


def _at_the_call(problem: Diagnostic, word: str, given: Span) -> Diagnostic:
    """A bad value is told where it is given, once however often the template uses it; the use comes second."""
    used = problem.span
    message_ = problem.message.replace(f"`{used.text}`", f"`{given.text}`")
    fix = replace(problem.fix, span=given) if problem.fix is not None and problem.fix.span == used else None
    related = (Related(used, f"`{word}` is used here"), *problem.related)
    return replace(problem, message=message_, span=given, related=related, fix=fix)


def as_plan(template: n.Statement) -> n.Statement:
    """A plan made from a template with nothing but its defaults, by which the template itself is checked."""
    assert isinstance(template.node, n.Head)
    head = replace(template.node, word="plan", source=template.node.name, arguments=())
    return n.Statement(head)


def _last_line(statement: n.Statement) -> int:
    last = statement
    while last.body:
        last = last.body[-1]
    return last.node.span.line


# ---- joining -------------------------------------------------------------------------------------


def _joined(template: tuple[n.Statement, ...], own: tuple[n.Statement, ...], call: n.Name, problems: Problems) -> Lines:
    """The plan's lines win over the template's where a line can stand only once; blocks are joined by name."""
    said = {kind_of(line.node) for line in own} - set(REPEATED)
    settings = [line for line in template if not _is_block(line) and kind_of(line.node) not in said]
    others = [line for line in own if not _is_block(line)]
    edits = {_key(line): line for line in own if _is_block(line)}
    models = [_as_model(line, call) for line in template if _is_block(line)]
    blocks = [_made(line, edits.pop(_key(line), None), call) for line in template if _is_block(line)]
    known = [_head(line).name.text for line in template if _is_block(line)]
    _refuse_edits_of_nothing(edits.values(), known, problems)
    folded = {name.casefold() for name in known}
    added = [line for line in own if _is_block(line) and _key(line) not in folded and _head(line).weeks is not None]
    return Lines((*settings, *others, *blocks, *added), tuple(models))


def _made(block: n.Statement, edit: n.Statement | None, call: n.Name) -> n.Statement:
    """A block of the plan: like the template's, with the plan's edits, and the template's own lines about its weeks."""
    head, body = _head(block), edit.body if edit is not None else ()
    said = {kind_of(line.node) for line in body}
    weekly = tuple(
        line
        for line in block.body
        if isinstance(line.node, n.NoteLine)
        or (isinstance(line.node, n.DeloadLine | n.ModifierLine) and kind_of(line.node) not in said)
    )
    changed = _head(edit) if edit is not None else head
    model = n.Name(_model_name(call, head.name), call.span)
    like = changed.like if edit is not None and changed.like is not None else model
    return n.Statement(n.BlockHead(changed.span, head.name, changed.weeks or head.weeks, like), (*weekly, *body))


def _as_model(block: n.Statement, call: n.Name) -> n.Statement:
    head = _head(block)
    name = n.Name(_model_name(call, head.name), head.name.span)
    like = n.Name(_model_name(call, head.like), head.like.span) if head.like is not None else None
    return n.Statement(replace(head, name=name, like=like), block.body)


def _model_name(call: n.Name, block: n.Name) -> str:
    return f"{call.text}: {block.text}"


def _refuse_edits_of_nothing(edits: Iterable[n.Statement], known: list[str], problems: Problems) -> None:
    """A block without its length can only be an edit, so its name must be one of the template's."""
    for edit in edits:
        head = _head(edit)
        if head.weeks is None:
            help_ = did_you_mean(head.name.text, known) or f"The template's blocks are {', '.join(known)}."
            problems.append(names.UNKNOWN_BLOCK.at(head.name.span, name=head.name.text, help=help_))


def _is_block(line: n.Statement) -> bool:
    return isinstance(line.node, n.BlockHead)


def _head(line: n.Statement) -> n.BlockHead:
    assert isinstance(line.node, n.BlockHead)
    return line.node


def _key(line: n.Statement) -> str:
    return _head(line).name.text.casefold()
