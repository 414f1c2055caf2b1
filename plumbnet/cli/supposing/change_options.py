"""Changes as options of a command line, made in the order in which they are given."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import wraps
from typing import Annotated, NoReturn, ParamSpec, Protocol, runtime_checkable

import typer
from pydantic import ValidationError
from typer.core import TyperCommand

from plumbnet.cli.arguments import fail
from plumbnet.cli.ending import NOT_UNDERSTOOD
from plumbnet.layout.edits import ChangeError
from plumbnet.layout.model import Change, mistakes
from plumbnet.layout.yaml import Fault, Plain, parse_yaml, visible

_WORDS = "plumbnet words"
_Given = ParamSpec("_Given")

Close = Annotated[list[str] | None, typer.Option("--close", metavar="VALVE", help="Shut a valve.")]
Open = Annotated[list[str] | None, typer.Option("--open", metavar="VALVE", help="Open a valve.")]
Remove = Annotated[list[str] | None, typer.Option("--remove", metavar="PART", help="Take out; the pipe is made good.")]
DrawOption = Annotated[
    list[str] | None, typer.Option("--draw", metavar="FIXTURE", help="Open a fixture and let it run.")
]
FailOption = Annotated[
    list[str] | None,
    typer.Option(
        "--fail",
        metavar="PART[:HOW]",
        help="Let a part fail, as tank:waterlogged; or let an event of the sweep happen to it, as tank:charge_lost.",
    ),
]
SetOption = Annotated[
    list[str] | None,
    typer.Option("--set", metavar="PART.FIELD=VALUE", help="Give a field a new value; without one, its usual one."),
]
AddOption = Annotated[
    list[str] | None,
    typer.Option("--add", metavar="{...}", help="Add a part and its run, as {part: v, kind: vent, run: split -> v}."),
]
InsertOption = Annotated[
    list[str] | None,
    typer.Option("--insert", metavar="{...}", help="Set a part into a pipe: {part: c, kind: tee, between: [a, b]}."),
]


@dataclass(frozen=True, slots=True)
class Given:
    """A change as an option gave it."""

    option: str
    text: str
    change: Change


@runtime_checkable
class _Context(Protocol):
    meta: dict[str, object]


def _remembering(parse_args: Callable[_Given, list[str]]) -> Callable[_Given, list[str]]:
    """Keeps the words of a command line, for options that come several times lose their order when they are read."""

    @wraps(parse_args)
    def remembered(*given: _Given.args, **named: _Given.kwargs) -> list[str]:
        context, words = given[-2:]
        if isinstance(context, _Context) and isinstance(words, list):
            context.meta[_WORDS] = [str(word) for word in words]
        return parse_args(*given, **named)

    return remembered


class Ordered(TyperCommand):
    """A command that knows in which order its options came."""

    parse_args = _remembering(TyperCommand.parse_args)


def given_changes(context: typer.Context) -> tuple[Given, ...]:
    """The changes that the options of an `Ordered` command ask for, in order; says what is wrong and exits."""
    words = [str(word) for word in context.meta[_WORDS]]
    values, _, order = context.command.make_parser(context).parse_args(args=words)
    waiting = {name: iter(value) for name, value in values.items() if name in _ACTIONS}
    names = (parameter.name or "" for parameter in order)
    return tuple(_given(_ACTIONS[name], next(waiting[name])) for name in names if name in waiting)


def _given(action: str, text: str) -> Given:
    option = f"--{action}"
    try:
        change = Change.model_validate({action: _READ[action](option, text)})
    except ValidationError as error:
        found = mistakes(error, what="the change", model=Change)
        fail_each(f"{option} {text}: {mistake}" for mistake in found)
    return Given(option, text, change)


def _name(_option: str, text: str) -> Plain:
    return text


def _failure(_option: str, text: str) -> Plain:
    part, colon, how = text.partition(":")
    return {"part": part.strip(), "how": how.strip()} if colon else part


def _values(option: str, text: str) -> Plain:
    """A part with a value for one field, or a mapping with several."""
    if text.lstrip().startswith("{"):
        return value_in(option, text, text)
    part, field, value = field_and_value(option, text, 'part.field=value, for example "heater.setpoint=140 degF"')
    return {"part": part, field: value}


def field_and_value(option: str, text: str, form: str) -> tuple[str, str, Plain]:
    """What has a field, the field, and its value; says in what form it is written and exits where it is not."""
    place, equals, value = text.partition("=")
    owner, dot, field = place.rpartition(".")
    if not (owner and dot and field and equals):
        fail(f"{option} {text}: write it as {form}")
    return owner.strip(), field.strip(), value_in(option, text, value)


def _mapping(option: str, text: str) -> Plain:
    return value_in(option, text, text)


def value_in(option: str, text: str, value: str) -> Plain:
    """The value of a piece of YAML; nothing where it is empty. Says what is wrong with it and exits."""
    if not value.strip():
        return None
    faults: list[Fault] = []
    node = parse_yaml(value, faults)
    if node is None or faults:
        fail_each(f"{option} {text}: {fault.sentence}" for fault in faults)
    return node.value


_ACTIONS = {
    "close": "close",
    "open": "open",
    "remove": "remove",
    "draw": "draw",
    "failing": "fail",
    "setting": "set",
    "adding": "add",
    "inserting": "insert",
}
"""The parameters of a command that are changes, and what they do."""
_READ: dict[str, Callable[[str, str], Plain]] = {
    "close": _name,
    "open": _name,
    "remove": _name,
    "draw": _name,
    "fail": _failure,
    "set": _values,
    "add": _mapping,
    "insert": _mapping,
}


def fail_each(lines: Iterable[str]) -> NoReturn:
    """Say all that is wrong, a line each, and exit."""
    for line in lines:
        typer.echo(visible(line), err=True)
    raise typer.Exit(NOT_UNDERSTOOD)


def refused_change(given: tuple[Given, ...], before: int, error: ChangeError) -> Iterator[str]:
    """Why changes cannot be made, option by option; `before` is the number of changes made before those given."""
    for mistake in error.mistakes:
        place = mistake.path[0]
        if isinstance(place, int) and place >= before:
            one = given[place - before]
            yield f"{one.option} {one.text}: {mistake}"
        else:
            yield str(mistake)
