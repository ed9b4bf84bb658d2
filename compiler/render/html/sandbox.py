"""Where a club's own template runs: it reads what it is given, and nothing else, within limits.

Comes in: the text of a template, the environment of the shipped ones. Goes out: an environment in which it can be run.

jinja2's sandbox keeps a template from Python's insides. It does not keep one from going on for ever, so passes of
loops, calls and characters are counted here, and what makes much out of little (`*`, `**`, wide formats) is held.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sized
from datetime import date
from enum import Enum
from functools import wraps
from typing import Any, Final

from jinja2 import BaseLoader, ChoiceLoader, FunctionLoader, StrictUndefined, Undefined, nodes
from jinja2.compiler import CodeGenerator, Frame
from jinja2.exceptions import SecurityError
from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment

from setwright.render.language import Language
from setwright.source import Source
from setwright.suggest import did_you_mean

# Of a page, at least and for each session on it: passes of loops, calls, and characters that stand in a loop ...
STEPS: Final = (1_000_000, 20_000)
CHARACTERS: Final = (5_000_000, 100_000)  # ... and what is printed. The shipped page takes a quarter of it.
MOST_RANGE: Final = 100_000
MOST_LENGTH: Final = 1_000_000  # of a text or list that a template puts together
MOST_DEPTH: Final = 5  # of lists in lists
LARGEST_POWER: Final = 64
CALL: Final = 5  # steps that a call takes, which is slower than a pass of a loop

CLUB: Final = "the club's template"

FILTERS: Final = (
    *("abs", "batch", "capitalize", "count", "d", "default", "e", "escape", "first", "float", "groupby", "int"),
    *("items", "join", "last", "length", "list", "lower", "map", "max", "min", "reject", "rejectattr", "reverse"),
    *("round", "select", "selectattr", "slice", "sort", "string", "striptags", "sum", "title", "trim", "truncate"),
    *("unique", "upper"),
)
GLOBALS: Final = ("range", "dict", "namespace", "cycler", "joiner")

_TEXT: Final = (
    *("capitalize", "casefold", "endswith", "isdigit", "lower", "lstrip", "partition", "removeprefix", "removesuffix"),
    *("rpartition", "rstrip", "split", "splitlines", "startswith", "strip", "title", "upper"),
)
_DATE: Final = ("year", "month", "day", "isoformat", "isoweekday")
_DICT: Final = ("get", "items", "keys", "values")


class LimitError(SecurityError):
    """A template that asks for more than it may have."""


class _Unknown(StrictUndefined):
    """A name that nothing has; of a field it says what has none of that name."""

    __slots__ = ()

    @property
    def _undefined_message(self) -> str:
        fields = getattr(type(self._undefined_obj), "__match_args__", None)
        if fields is None or self._undefined_hint:
            return super()._undefined_message
        near = did_you_mean(str(self._undefined_name), fields)
        said = f"a {type(self._undefined_obj).__name__} has no `{self._undefined_name}`"
        return f"{said}. {near.removesuffix('?')}" if near else said


class _Counting(CodeGenerator):
    """Compiles loops and `~` so that they pass through the environment, which counts."""

    def visit_For(self, node: nodes.For, frame: Frame) -> None:  # noqa: N802 (jinja2 names it so)
        weight = 1 + sum(len(text.data) for text in node.find_all(nodes.TemplateData))
        counted = nodes.EnvironmentAttribute("counted")
        node.iter = nodes.Call(counted, [node.iter, nodes.Const(weight)], [], None, None)
        node.iter.set_environment(self.environment)
        node.iter.set_lineno(node.lineno)
        super().visit_For(node, frame)

    def visit_Concat(self, node: nodes.Concat, frame: Frame) -> None:  # noqa: N802
        for at, part in enumerate(node.nodes):
            node.nodes[at] = nodes.Call(nodes.EnvironmentAttribute("written"), [part], [], None, None)
            node.nodes[at].set_environment(self.environment)
        super().visit_Concat(node, frame)

    def visit_List(self, node: nodes.List, frame: Frame) -> None:  # noqa: N802
        self._shallow(super().visit_List, node, frame)

    def visit_Dict(self, node: nodes.Dict, frame: Frame) -> None:  # noqa: N802
        self._shallow(super().visit_Dict, node, frame)

    def visit_Tuple(self, node: nodes.Tuple, frame: Frame) -> None:  # noqa: N802
        if node.ctx == "load":
            self._shallow(super().visit_Tuple, node, frame)
        else:
            super().visit_Tuple(node, frame)

    def _shallow(self, visit: Callable[[Any, Frame], None], node: nodes.Expr, frame: Frame) -> None:
        self.write("environment.shallow(")
        visit(node, frame)
        self.write(")")


class ClubEnvironment(ImmutableSandboxedEnvironment):
    """The sandbox of one template. `begin` starts the counting of a page anew."""

    code_generator_class = _Counting
    intercepted_binops = frozenset(("+", "*", "**", "%"))

    def __init__(self, template: Source, shipped: BaseLoader) -> None:
        super().__init__(
            loader=ChoiceLoader([FunctionLoader(_only(template)), shipped]),
            autoescape=True,
            undefined=_Unknown,
            trim_blocks=True,
            lstrip_blocks=True,
            optimized=False,  # nothing is worked out before the counting begins
            finalize=self.written,
        )
        self.filters = {name: self._charging(self.filters[name]) for name in FILTERS}
        self.globals = {**{name: self.globals[name] for name in GLOBALS}, "range": _range}
        self.begin(0)

    def begin(self, sessions: int) -> None:
        """Forget what earlier pages took, and allow for a page of so many sessions."""
        self._steps = self._characters = 0
        self._most_steps = STEPS[0] + STEPS[1] * sessions
        self.most_characters = CHARACTERS[0] + CHARACTERS[1] * sessions

    def counted(self, values: Iterable[Any], weight: int) -> Iterator[Any]:
        """What a loop goes over; each pass takes its part of the steps."""
        for value in values:
            self._take(weight)
            yield value

    def written(self, value: Any) -> Any:
        """What is printed: text and numbers, of which there may be so many characters in all."""
        if not isinstance(value, str | int | float | Enum | date | Undefined | None):
            raise SecurityError(f"only text and numbers can be printed, not a {type(value).__name__}")
        self._characters += len(value) if isinstance(value, str) else 1
        if self._characters > self.most_characters:
            raise LimitError(f"more than {self.most_characters:,} characters are printed")
        return value

    def shallow(self, value: Any, depth: int = MOST_DEPTH) -> Any:
        """A list, if it is not too deep: lists of one list twice, and so on, would be endless to compare or print."""
        if isinstance(value, list | tuple | dict):
            if depth == 0:
                raise LimitError(f"lists in lists, more than {MOST_DEPTH} deep")
            self._take(len(value))
            for one in value.values() if isinstance(value, dict) else value:
                self.shallow(one, depth - 1)
        return value

    def is_safe_attribute(self, obj: Any, attr: str, value: Any) -> bool:
        """Fields of what is given, and few methods of text, dates and dictionaries."""
        if not super().is_safe_attribute(obj, attr, value):
            return False
        match obj:
            case str():
                return attr in _TEXT
            case date():
                return attr in _DATE
            case dict():
                return attr in _DICT
            case Language():
                return hasattr(Language, attr)
            case int() | float() | bytes() | list() | tuple():
                return isinstance(obj, Enum)
            case _:
                return True

    def wrap_str_format(self, value: Any) -> Callable[..., str] | None:
        """`format` puts values where `{name}` stands; a width or an index in it is refused."""
        made = super().wrap_str_format(value)
        if made is None:
            return None

        @wraps(made)
        def plain_format(*args: Any, **kwargs: Any) -> str:
            if any(mark in value.__self__ for mark in ":!["):
                raise SecurityError("`format` takes only `{name}` here")
            for one in (*args, *kwargs.values()):
                self.written(one)
            return made(*args, **kwargs)

        return plain_format

    def call(__self, __context: Context, __obj: Any, *args: Any, **kwargs: Any) -> Any:  # noqa: N805
        """Every call of a macro or function takes steps, and so does each item of what it is given."""
        __self._take(CALL + sum(len(one) for one in args if isinstance(one, Sized)))
        return __self.shallow(super().call(__context, __obj, *args, **kwargs))

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:
        """What makes much out of little is asked first how much it makes."""
        self._take(1)
        match operator:
            case "%" if isinstance(left, str | bytes):
                raise SecurityError("`%` works on numbers only; put texts together with `~`")
            case "**" if not (_is_small(left) and _is_small(right)):
                raise LimitError(f"a power of more than {LARGEST_POWER}")
            case "*" if _size(left) * _size(right) > MOST_LENGTH:
                raise LimitError("a product that is too large")
            case "+" if _size(left) + _size(right) > MOST_LENGTH:
                raise LimitError("a text or list that is too long")
        return super().call_binop(context, operator, left, right)

    def _take(self, steps: int) -> None:
        self._steps += steps
        if self._steps > self._most_steps:
            raise LimitError("it goes on for too long")

    def _charging(self, made: Callable[..., Any]) -> Callable[..., Any]:
        """A filter that counts what it is given. Its marks, which say what jinja2 passes it, stay on it."""

        @wraps(made)
        def charged(*args: Any, **kwargs: Any) -> Any:
            self._take(1 + sum(len(one) for one in args if isinstance(one, str | list | tuple | dict)))
            for one in (*args[1:], *kwargs.values()):
                if isinstance(one, int) and abs(one) > MOST_LENGTH:
                    raise LimitError("a number that is too large")
            return self.shallow(made(*args, **kwargs))

        return charged


def _only(template: Source) -> Callable[[str], tuple[str, str, Callable[[], bool]] | None]:
    """A loader's function that knows one template, by a name that no file has."""
    return lambda name: (template.text, template.path, lambda: True) if name == CLUB else None


def _range(*bounds: int) -> range:
    made = range(*bounds)
    if len(made) > MOST_RANGE:
        raise LimitError(f"a range of more than {MOST_RANGE:,}")
    return made


def _size(value: Any) -> int:
    """How many items a text or list has; a number counts by its size where it multiplies one."""
    if isinstance(value, Sized):
        return len(value)
    return abs(value) if isinstance(value, int) else 1


def _is_small(value: Any) -> bool:
    return isinstance(value, int | float) and abs(value) <= LARGEST_POWER
