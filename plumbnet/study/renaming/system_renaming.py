"""A layout to the same layout in which some parts have other names."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TypeVar

from plumbnet.layout.model import ARROW, Acceptance, Change, End, Pipe, Scenario, System

_Thing = TypeVar("_Thing")
_Naming = Callable[[str], str]


def renamed_system(system: System, naming: Callable[[str], str]) -> System:
    """The layout with the name that `naming` gives each part: pipes, lines, acceptances and scenarios follow.

    Where a scenario's own words name a part (its note), they stay.
    """
    record = replace(system.record, lines=_rekeyed(system.record.lines, naming))
    return replace(
        system,
        parts=_rekeyed(system.parts, naming),
        pipes=tuple(_pipe(pipe, naming) for pipe in system.pipes),
        written=_rekeyed(system.written, naming),
        scenarios={name: _scenario(one, naming) for name, one in system.scenarios.items()},
        accept=tuple(_acceptance(one, naming) for one in system.accept),
        record=record,
    )


def _rekeyed(things: Mapping[str, _Thing], naming: _Naming) -> dict[str, _Thing]:
    return {naming(name): thing for name, thing in things.items()}


def _pipe(pipe: Pipe, naming: _Naming) -> Pipe:
    start, end = (End(naming(one.part), one.port) for one in pipe.ends)
    return replace(pipe, start=start, end=end)


def _acceptance(acceptance: Acceptance, naming: _Naming) -> Acceptance:
    return acceptance.model_copy(update={"part": naming(acceptance.part)})


def _scenario(scenario: Scenario, naming: _Naming) -> Scenario:
    return scenario.model_copy(update={"change": tuple(_change(one, naming) for one in scenario.change)})


def _change(change: Change, naming: _Naming) -> Change:
    """A change with the parts that it names; what it brings in keeps its name."""
    if change.insert is not None:
        first, second = (_stop(one, naming) for one in change.insert.between)
        return change.model_copy(update={"insert": change.insert.model_copy(update={"between": (first, second)})})
    if change.add is not None:
        run = f" {ARROW} ".join(_stop(one.strip(), naming) for one in change.add.run.split(ARROW))
        return change.model_copy(update={"add": change.add.model_copy(update={"run": run})})
    for action, about in (("set", change.set), ("fail", change.fail)):
        if about is not None:
            return change.model_copy(update={action: about.model_copy(update={"part": naming(about.part)})})
    return change.model_copy(update={change.action: naming(getattr(change, change.action))})


def _stop(stop: str, naming: _Naming) -> str:
    """A part, or one of its ports, as a run names it."""
    part, dot, port = stop.partition(".")
    return f"{naming(part)}{dot}{port}"
