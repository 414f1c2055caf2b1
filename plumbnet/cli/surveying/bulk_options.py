"""What is to be done to every part of a kind, as options of a command line."""

from collections.abc import Iterable
from typing import Annotated

import typer

from plumbnet.cli.arguments import fail
from plumbnet.cli.supposing import fail_each, field_and_value, value_in
from plumbnet.study.whatif import FitEach, SetEach, Supposed, joined_settings

EachOption = Annotated[
    list[str] | None,
    typer.Option("--each", metavar="KIND.FIELD=VALUE", help="Give a field of every part of a kind a new value."),
]
BehindOption = Annotated[
    list[str] | None,
    typer.Option("--behind", metavar="KIND=KIND", help="Fit a part behind every part of a kind, as main=check_valve."),
]
_FIELD = "kind.field=value, for example meter.check=true"
_FITTED = 'kind=kind, for example main=check_valve or "main={kind: pressure_reducer, set: 50 psi}"'


def supposed_of(scenario: str | None, each: Iterable[str] | None, behind: Iterable[str] | None) -> Supposed:
    """What the options ask for, values set before parts are fitted; says what can be done in no layout and exits."""
    values = joined_settings([_set(text) for text in each or ()])
    fitted = [_fitted(text) for text in behind or ()]
    wrong = [f"--each {done.kind}: {mistake}" for done in values for mistake in done.mistakes()]
    wrong += [f"--behind {done.kind}: {mistake}" for done in fitted for mistake in done.mistakes()]
    if wrong:
        fail_each(wrong)
    return Supposed(scenario, (*values, *fitted))


def _set(text: str) -> SetEach:
    kind, field, value = field_and_value("--each", text, _FIELD)
    return SetEach(kind, {field: value})


def _fitted(text: str) -> FitEach:
    kind, _, fitted = text.partition("=")
    value = value_in("--behind", text, fitted)
    if isinstance(value, str):
        return FitEach(kind.strip(), value, {})
    if not isinstance(value, dict) or not isinstance(value.get("kind"), str):
        fail(f"--behind {text}: write it as {_FITTED}")
    return FitEach(kind.strip(), str(value["kind"]), {name: each for name, each in value.items() if name != "kind"})
