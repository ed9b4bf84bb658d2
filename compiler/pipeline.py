"""The whole compiler as named steps: files, trees, names, weeks, loads, promises.

This is the only place that strings the phases together.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from datetime import date
from pathlib import Path

from setwright.athlete import Athlete
from setwright.check import breaches, rule_faults
from setwright.diagnostics import Diagnostic, Severity
from setwright.diagnostics.catalogue import names, reading, structure
from setwright.expand import expanded_plan
from setwright.files import LIBRARY, Files, decoded, find_root
from setwright.fit import adapted_plan, fitted_plan
from setwright.fit.names import log_with_plain_names, with_plain_names
from setwright.link.athletes import linked_athlete
from setwright.link.declarations import declared_library
from setwright.link.imports import Imports, Unit
from setwright.link.library import Declared, Library
from setwright.link.movements import check_bests
from setwright.link.plans import Linked, linked_plan
from setwright.link.rulesets import check_ruleset
from setwright.link.scopes import Scopes
from setwright.link.templates import as_plan
from setwright.log.model import Log
from setwright.plan import Movement, Plan
from setwright.record import record, replace
from setwright.rules import Promise, Wish
from setwright.source import Source, Span
from setwright.suggest import did_you_mean, either
from setwright.syntax import LineReader
from setwright.syntax.nodes import AwayLine, Head, Name, SessionHead

EVERY_ATHLETE = "*"
PROGRESSIONS = "progressions.plan"


@record
class Compilation:
    """One plan, fitted to one athlete or to none, what it promises, and what was done."""

    plan: Plan
    promise: Promise
    log: Log = Log()


@record
class Compiled:
    """Everything one run found and made. `dependencies` pairs each file read with the sha256 of its bytes."""

    diagnostics: tuple[Diagnostic, ...]
    compilations: tuple[Compilation, ...]
    dependencies: tuple[tuple[str, str | None], ...]
    units: tuple[Unit, ...] = ()  # every file that was read, imports first
    library: Library | None = None  # what they declare; None where the file itself could not be read

    @property
    def has_errors(self) -> bool:
        """True where no sheets can be made."""
        return _has_errors(self.diagnostics)


def compile(
    path: str,
    *,
    athletes: tuple[str, ...] = (),
    root: str | None = None,
    text: str | None = None,
    logs: tuple[str, ...] = (),
    on: date | None = None,
) -> Compiled:
    """Compile the plans of a file.

    `athletes` are names of athletes that the files declare, or paths of files that declare some, or `*` for every one
    declared. `logs` are paths of files with sessions that were done; sessions planned before the day `on` are over,
    whether they were done or not. `text` stands for the file's content when it
    comes from elsewhere. Nothing is raised for what files hold.
    """
    files = Files(Path(root) if root else find_root(Path(path)))
    return compiled(path, files, LineReader(), athletes=athletes, text=text, logs=logs, on=on)


def compiled(
    path: str,
    files: Files,
    reader: LineReader,
    *,
    athletes: tuple[str, ...] = (),
    text: str | None = None,
    logs: tuple[str, ...] = (),
    on: date | None = None,
) -> Compiled:
    """The same with a window to the files and a reader of one's own, which may keep what does not change."""
    problems: list[Diagnostic] = []
    source = _root_source(files, path, text)
    if isinstance(source, Diagnostic):
        return Compiled((source,), (), files.dependencies)
    scopes = Scopes()
    units = Imports(files, reader, problems, scopes).closure(Path(path), source)
    units = (*units, *_other_units(files, reader, athletes, logs, units, problems, scopes))
    library = declared_library(units, reader, problems, scopes)
    library.shipped_progressions = _shipped_progressions(files, reader)
    _check_root(units, source, library, problems)
    chosen = _chosen_athletes(library, athletes, source, problems)
    kept = _logs(units, logs, chosen, library, problems)
    compilations = _compilations(library, source, chosen, kept, on, problems)
    if scopes.lost:
        from setwright.link.lost import without_followers

        problems = [*without_followers(problems, scopes)]
    return Compiled(_in_order(problems), tuple(compilations), files.dependencies, units, library)


def library(path: str | None = None) -> Library:
    """What the shipped library declares, and a file's own imports where one is given."""
    files = Files(find_root(Path(path)) if path else Path.cwd())
    lines = "use stdlib.exercises\nuse stdlib.rules\nuse stdlib.progressions\nuse stdlib.templates\n"
    source = files.read(Path(path), path) if path else Source("library.plan", lines)
    reader = LineReader()
    return Library(reader) if isinstance(source, Diagnostic) else declared(source, files, reader)


def declared(source: Source, files: Files, reader: LineReader) -> Library:
    """What a file and its imports declare, without anything being linked."""
    problems: list[Diagnostic] = []
    scopes = Scopes()
    units = Imports(files, reader, problems, scopes).closure(Path(source.path), source)
    library = declared_library(units, reader, problems, scopes)
    library.shipped_progressions = _shipped_progressions(files, reader)
    return library


# ---- the steps -----------------------------------------------------------------------------------


def _root_source(files: Files, path: str, text: str | None) -> Source | Diagnostic:
    if text is not None:
        return decoded(text.encode("utf-8", "surrogateescape"), path)
    return files.read(Path(path), path)


def _other_units(
    files: Files,
    reader: LineReader,
    named: tuple[str, ...],
    logs: tuple[str, ...],
    units: tuple[Unit, ...],
    problems: list[Diagnostic],
    scopes: Scopes,
) -> tuple[Unit, ...]:
    """The files that athletes and logs are named by, with what they use."""
    known = {os.path.realpath(unit.parsed.source.path) for unit in units}
    made: list[Unit] = []
    for name in dict.fromkeys((*named, *logs)):
        if not name.endswith(".plan") or os.path.realpath(name) in known:
            continue
        found = files.read(Path(name), name)
        if isinstance(found, Diagnostic):
            problems.append(found)
            continue
        for unit in Imports(files, reader, problems, scopes).closure(Path(name), found, is_log=name in logs):
            real = os.path.realpath(unit.parsed.source.path)
            if real not in known:
                made.append(unit)
                known.add(real)
    return tuple(made)


def _shipped_progressions(files: Files, reader: LineReader) -> Callable[[], dict[str, Declared]]:
    """Reads the library's progressions, which lines may name without importing them."""

    def read() -> dict[str, Declared]:
        source = files.read(files.library / PROGRESSIONS, f"{LIBRARY}/{PROGRESSIONS}")
        if isinstance(source, Diagnostic):
            return {}
        return declared_library((Unit(reader.read(source), shipped=True),), reader, []).progressions

    return read


def _check_root(units: tuple[Unit, ...], source: Source, library: Library, problems: list[Diagnostic]) -> None:
    """Everything that the files of the workspace declare is linked once, whether a plan uses it or not."""
    movements: list[Movement] = []
    for unit in units:
        if unit.shipped:
            continue
        if not unit.parsed.statements and unit.parsed.source is source:
            problems.append(reading.EMPTY_FILE.at(Span(source, 1, 0, 0)))
        for statement in unit.parsed.statements:
            match statement.node:
                case Head(word="exercise", name=name):
                    movement = library.movement(name, problems)
                    if movement is not None:
                        movements.append(movement)
                case Head(word="rules"):
                    problems.extend(rule_faults(check_ruleset(statement, library, problems)))
                case Head(word="template", name=name):
                    _check_template(Declared(name.text, name.span, statement), library, problems)
                case Head(word="progression"):
                    from setwright.link.progressions import check_progression

                    check_progression(statement, library, problems)
                case _:
                    pass
    check_bests(library, movements, problems)


def _check_template(template: Declared, library: Library, problems: list[Diagnostic]) -> None:
    """A template by itself: the plan that it makes with its defaults, where all its parameters have one."""
    statement = library.statement(template)
    assert isinstance(statement.node, Head)
    if all(parameter.value is not None for parameter in statement.node.arguments):
        linked = linked_plan(replace(template, statement=as_plan(statement)), library, problems)
        if linked is not None:
            expanded_plan(linked.plan, (), (), problems)


def _chosen_athletes(
    library: Library, asked: tuple[str, ...], source: Source, problems: list[Diagnostic]
) -> list[Athlete]:
    _refuse_doubles(library.athletes, "athlete", problems)
    linked = {declared.name: linked_athlete(declared, library, problems) for declared in library.athletes}
    chosen: dict[str, Athlete] = {}
    for name in asked:
        if name == EVERY_ATHLETE:
            chosen.update(linked)
        elif name.endswith(".plan"):
            real = os.path.realpath(name)
            chosen.update((who, one) for who, one in linked.items() if os.path.realpath(one.span.source.path) == real)
        elif name in linked:
            chosen[name] = linked[name]
        else:
            help_ = did_you_mean(name, linked) or _who_there_is(linked)
            problems.append(names.UNKNOWN_ATHLETE.at(Span(source, 1, 0, 0), name=name, help=help_))
    return list(chosen.values())


def _logs(
    units: tuple[Unit, ...],
    named: tuple[str, ...],
    chosen: list[Athlete],
    library: Library,
    problems: list[Diagnostic],
) -> Mapping[str | None, Log]:
    """What was done, and days away; most files tell of neither, and load nothing for it."""
    if not any(_tells_of_training(unit) for unit in units if not unit.shipped):
        return {}
    from setwright.link.logs import linked_logs

    return linked_logs(units, named, tuple(athlete.name for athlete in chosen), library, problems)


def _tells_of_training(unit: Unit) -> bool:
    return any(
        isinstance(statement.node, SessionHead | AwayLine)
        or any(isinstance(line.node, AwayLine) for line in statement.body)
        for statement in unit.parsed.statements
    )


def _who_there_is(known: Iterable[str]) -> str:
    named = [f"`{name}`" for name in known]
    return f"The athletes are {either(named, 'and')}." if named else "Give a file that declares one, `ines.plan` say."


def _refuse_doubles(declared: Iterable[Declared], what: str, problems: list[Diagnostic]) -> None:
    seen: dict[str, Declared] = {}
    for one in declared:
        first = seen.setdefault(one.name.casefold(), one)
        if first is not one:
            problems.append(structure.PLAN_TWICE.at(one.span, what=what, name=one.name))


def _compilations(
    library: Library,
    source: Source,
    athletes: list[Athlete],
    logs: Mapping[str | None, Log],
    on: date | None,
    problems: list[Diagnostic],
) -> list[Compilation]:
    """The root file's plans, each for each athlete."""
    plans = [declared for declared in library.plans if declared.span.source == source]
    _refuse_doubles(plans, "plan", problems)
    readable = not _has_errors(problems)  # sums over lines that could not be read would raise false alarms
    made: list[Compilation] = []
    for declared in plans:
        linked = linked_plan(declared, library, problems)
        if linked is None:
            continue
        problems.extend(rule_faults(linked.promise))
        muscles = library.muscles.values()
        groups = tuple((group.word, group.members) for group in library.groups.values())
        plan = expanded_plan(linked.plan, muscles, groups, problems)
        if plan is None:
            continue
        if readable:
            plan = _emphasised(plan, linked.promise, linked.wishes, problems)
            problems.extend(breaches(plan, linked.promise))
        for athlete in athletes or (None,):
            log = logs.get(athlete.name if athlete else None, Log())
            found: list[Diagnostic] = []
            done = _adapted(plan, linked, athlete, library, found)
            if log.sessions or log.aways:
                done, found = _followed(done, plan, linked, athlete, library, log, on, found)
            problems.extend(found)
            fitted = fitted_plan(done, athlete, _finder(library), problems, log)
            log = log_with_plain_names(log, fitted, library.plain_names)
            made.append(Compilation(with_plain_names(fitted, library.plain_names), linked.promise, log))
    return made


def _adapted(plan: Plan, linked: Linked, athlete: Athlete | None, library: Library, problems: list[Diagnostic]) -> Plan:
    """The plan with the athlete's movements, days and wishes."""
    if athlete is None:
        return plan
    done = adapted_plan(plan, athlete, _finder(library), problems)
    return _emphasised(done, linked.promise, athlete.wishes, problems)


def _followed(
    adapted: Plan,
    plan: Plan,
    linked: Linked,
    athlete: Athlete | None,
    library: Library,
    log: Log,
    on: date | None,
    found: list[Diagnostic],
) -> tuple[Plan, list[Diagnostic]]:
    """The plan as days away and what was done leave it, laid out again where a line of it answers the log."""
    from setwright.fit.absences import with_absences, without_missed
    from setwright.fit.easing import eased_places, with_easing
    from setwright.log.claims import unfounded_claims
    from setwright.log.history import history

    days = frozenset(session.day for session in log.sessions)
    dated, left_out = with_absences(adapted, log.aways, days, found)
    rule = (athlete.ease_in if athlete else None) or plan.ease_in
    eased = eased_places(dated, log, rule, on, left_out)
    if any(line.advance for week in plan.weeks for session in week.sessions for line in session.lines):
        known = history(dated, log, on, left_out | eased.keys())
        found = []
        again = expanded_plan(linked.plan, plan.muscles, plan.groups, [], known)
        if again is not None:
            again = _emphasised(again, linked.promise, linked.wishes, [])
            again = _adapted(again, linked, athlete, library, found)
            dated, _ = with_absences(again, log.aways, days, found)
    found.extend(unfounded_claims(dated, log))
    return without_missed(with_easing(dated, rule, eased), left_out, log.aways), found


def _emphasised(plan: Plan, promise: Promise, wishes: tuple[Wish, ...], problems: list[Diagnostic]) -> Plan:
    """The plan with the wished sets, as far as its rules allow; most plans wish for none, and load nothing for it."""
    if not wishes:
        return plan
    from setwright.emphasis import emphasised

    placed, found = emphasised(plan, promise, wishes)
    problems.extend(found)
    return placed


def _finder(library: Library) -> Callable[[str], Movement | None]:
    def movement_of(name: str) -> Movement | None:
        return library.movement(Name(name, Span(Source("", ""), 1, 0, 0)), [])

    return movement_of


def _has_errors(problems: Iterable[Diagnostic]) -> bool:
    return any(problem.severity is Severity.ERROR for problem in problems)


def _in_order(problems: list[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Each once, by place: a line that several blocks inherit is reported once."""
    unique: dict[tuple[str, str, str], Diagnostic] = {}
    for problem in problems:
        unique.setdefault((str(problem.span), problem.code.number, problem.message), problem)
    return tuple(sorted(unique.values(), key=lambda d: (d.span.source.path, d.span.line, d.span.start, d.code.number)))
