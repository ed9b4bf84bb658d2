"""What stands under the cursor: a prescription week by week with its loads, or what a name means."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence

from lsprotocol import types as lsp

from setwright.check.measures import MEASURES
from setwright.editor.features.feature import Feature
from setwright.editor.features.places import asked
from setwright.editor.features.prescriptions import line_text, trains, week_text
from setwright.editor.meanings import declaration
from setwright.editor.mentions import Kind, Mention
from setwright.editor.session import EditorSession
from setwright.link.library import Library
from setwright.pipeline import Compilation
from setwright.plan import SegmentKind
from setwright.render import words
from setwright.render.derivation import Entry, of_segment
from setwright.render.language import ENGLISH
from setwright.report.derivation import Derivation
from setwright.source import Span

MOST_ROWS = 40  # more weeks than anyone reads in a small window
MOST_STEPS = 12


def _answer(session: EditorSession, params: lsp.HoverParams) -> lsp.Hover | None:
    place = asked(session, params.text_document, params.position)
    if place is None:
        return None
    path, _, line, column = place
    mention = session.mention(path, line, column)
    library = session.library(path)
    said: list[str] = []
    written = session.written_at(path, line)
    if written is not None:
        said = list(_prescription(*written))
    elif mention is not None and library is not None:
        said = list(_meaning(mention, library))
    if mention is not None and library is not None and mention.kind not in (Kind.MOVEMENT, Kind.DAY):
        said = list(_meaning(mention, library)) or said
    if not said:
        return None
    span = mention.name.span if mention is not None else None
    content = lsp.MarkupContent(lsp.MarkupKind.Markdown, "\n\n".join(said))
    return lsp.Hover(content, session.positions.range(span) if span is not None else None)


def _prescription(made: Compilation, written: Sequence[Derivation]) -> Iterator[str]:
    movements = {one.line.movement.name: one.line.movement for one in written}
    for movement in movements.values():
        muscles = trains(movement)
        yield f"**{_safe(movement.name)}**" + (f": {muscles}" if muscles else "")
    days = len({one.session.slot for one in written}) > 1
    yield "\n".join(_rows(written[:MOST_ROWS], days=days))
    if len(written) > MOST_ROWS:
        yield f"and {len(written) - MOST_ROWS} more"
    if made.plan.athlete is not None:
        yield f"Loads for {_safe(made.plan.athlete)}"
    first = written[0]
    steps = [f"- {_safe(said)}" for said in _steps(first)]
    if steps:
        yield "\n".join([f"How week {first.week.number} comes about:", "", *steps])


def _rows(written: Sequence[Derivation], *, days: bool) -> Iterator[str]:
    yield f"| week |{' day |' if days else ''} work | rest |"
    yield f"| ---: |{' --- |' if days else ''} --- | --- |"
    for one in written:
        rest = words.rest(one.line.rest, ENGLISH) if one.line.rest is not None else ""
        day = f" {one.session.slot} |" if days else ""
        yield f"| {week_text(one.week)} |{day} {_safe(line_text(one.line))} | {rest} |"


def _steps(one: Derivation) -> Iterator[str]:
    """Where the values of the work come from, as `why` tells them; what is as it was written needs no words."""
    work = (part for part in one.parts if part.segment.kind is not SegmentKind.WARM_UP)
    found = [entry for part in work for entry in of_segment(part, one, ENGLISH) if not _is_as_written(entry)]
    for entry in found[:MOST_STEPS]:
        told = " ".join(text for text in (entry.head, entry.value) if text.strip())
        yield f"{told}: {entry.reason} ({_place(entry.place, one.line.span)})" if told else entry.reason
    if len(found) > MOST_STEPS:
        yield f"and {len(found) - MOST_STEPS} more, which `setwright why` tells"


def _is_as_written(entry: Entry) -> bool:
    return entry.reason.startswith("as written")


def _place(span: Span, here: Span) -> str:
    return f"line {span.line}" if span.source == here.source else f"{os.path.basename(span.source.path)}:{span.line}"


def _meaning(mention: Mention, library: Library) -> Iterator[str]:
    name = mention.name
    match mention.kind:
        case Kind.MOVEMENT:
            movement = library.movement(name, [])
            if movement is not None:
                yield f"**{_safe(movement.name)}**: {trains(movement)}"
                facts = (("pattern", movement.pattern), ("needs", ", ".join(movement.needs)), ("cue", movement.cue))
                yield "\n".join(f"- {label}: {_safe(text)}" for label, text in facts if text)
        case Kind.MUSCLE:
            word = library.known_subject(name, [])
            if word in library.muscles:
                yield f"**{library.muscles[word].title}**"
            elif word is not None:
                yield f"**{library.groups[word].title}**: {', '.join(library.groups[word].members)}"
        case Kind.MEASURE:
            measure = next((each for each in MEASURES if each.name == name.text), None)
            if measure is not None:
                yield f"**{measure.name}**: {measure.about}"
                yield f"`{measure.example}`"
        case Kind.RULES | Kind.TEMPLATE | Kind.PROGRESSION | Kind.PARAMETER | Kind.EQUIPMENT:
            span = declaration(mention, library)
            if span is not None:
                yield f"```plan\n{span.source.line(span.line).strip()}\n```"
        case _:
            return


def _safe(text: str) -> str:
    """Text that a person wrote, so that no sign of it is taken for a mark of Markdown."""
    return "".join(f"\\{sign}" if sign in "\\`*_{}[]<>#|!" else sign for sign in text)


FEATURE = Feature(lsp.TEXT_DOCUMENT_HOVER, _answer)
