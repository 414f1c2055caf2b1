"""The scenarios of a file, each read and tried by itself, so that a bad one does not stop the file."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from pydantic import ValidationError

from plumbnet.layout.edits import ChangeError, with_changes
from plumbnet.layout.file.document import FORMAT, Document
from plumbnet.layout.file.fault_collector import FaultCollector
from plumbnet.layout.model import Mistake, Path, Scenario, System
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Fault, Plain, quoted

_TOP = "scenarios"
_AFTER = "name one of this file, or leave it out"
_CIRCLE = "let one of them stand by itself"
MOST_STEPS = 50
"""Most scenarios that build on each other, one on the other."""


@dataclass(slots=True)
class ScenarioReader:
    """Reads the scenarios of a file; what is wrong with each is told to `told`, which knows of nothing else."""

    told: FaultCollector
    units: Units = "us"
    read: dict[str, Scenario] = field(default_factory=dict)
    faulty: dict[str, tuple[Fault, ...]] = field(default_factory=dict)

    def read_all(self, value: Plain) -> None:
        """Every scenario as it is written; changes are not tried yet."""
        for name, one in (value if isinstance(value, dict) else {}).items():
            try:
                self.read[name] = _read(name, one, self.units)
            except ValidationError as error:
                with_faults = len(self.told.faults)
                self.told.tell_invalid(error, (), what="a layout", model=Document)
                self.faulty[name] = tuple(self.told.faults[with_faults:])

    def tried_on(self, system: System) -> System:
        """The system with its scenarios, each tried on a copy; those that cannot be made apart, with why."""
        found = replace(system, scenarios=self.read)
        for name in self.read:
            if name not in self.faulty:
                self._judge(name, list(self._wrong(found, name)))
        good = {name: one for name, one in self.read.items() if name not in self.faulty}
        in_order = {name: self.faulty[name] for name in self._names() if name in self.faulty}
        return replace(system, scenarios=good, faulty_scenarios=in_order)

    def _names(self) -> list[str]:
        return list(self.told.root.at(_TOP).keys or {})

    def _judge(self, name: str, found: list[Mistake]) -> None:
        before = len(self.told.faults)
        for mistake in found:
            self.told.tell(mistake.under(_TOP, name))
        if found:
            self.faulty[name] = tuple(self.told.faults[before:])

    def _wrong(self, system: System, name: str) -> Iterator[Mistake]:
        """What is wrong with a scenario: what it builds on, or else its changes."""
        base = self.read[name].after
        if base is None:
            yield from _refused(system, name)
        elif base not in self._names():
            meant = (base, [known for known in self._names() if known != name])
            yield Mistake(("after",), f"no scenario is called {quoted(base)}", _AFTER, meant=meant)
        elif name in (below := self._below(name)):
            way = " after ".join(map(quoted, [name, *below[: below.index(name) + 1]]))
            yield Mistake(("after",), f"these scenarios build on each other in a circle: {way}", _CIRCLE)
        elif len(below) > MOST_STEPS:
            yield Mistake(("after",), f"more than {MOST_STEPS} scenarios build on each other here", _CIRCLE)
        else:
            if base not in self.faulty:
                self._judge(base, list(self._wrong(system, base)))
            if base in self.faulty:
                yield Mistake(("after",), f"{quoted(base)} cannot be made, and so neither can what builds on it")
            else:
                yield from _refused(system, name)

    def _below(self, name: str) -> list[str]:
        """What a scenario builds on, what that builds on and so on, to the first that is met again or one too many."""
        way: list[str] = []
        scenario = self.read.get(name)
        while scenario is not None and scenario.after is not None and len(way) <= MOST_STEPS:
            if scenario.after in way:
                break
            way.append(scenario.after)
            scenario = self.read.get(scenario.after)
        return way


def _read(name: str, value: Plain, units: Units) -> Scenario:
    alone = {"plumbnet": FORMAT, "parts": {}, "runs": [], _TOP: {name: value}}
    return Document.model_validate(alone, context={"units": units}).scenarios[name]


def _refused(system: System, name: str) -> Iterator[Mistake]:
    """Why the changes of a scenario cannot be made, at those of them that are its own."""
    own: Path = ("change",)
    changes = system.changes_of(name)
    before = len(changes) - len(system.scenarios[name].change)
    try:
        with_changes(system, changes)
    except ChangeError as error:
        for mistake in error.mistakes:
            index, *inside = mistake.path
            yield replace(mistake, path=(*own, index - before if isinstance(index, int) else index, *inside))


def added_names(scenarios: Mapping[str, Scenario]) -> set[str]:
    """Names of the parts that scenarios bring in."""
    placed = [change.add or change.insert for one in scenarios.values() for change in one.change]
    return {part.part for part in placed if part is not None}
