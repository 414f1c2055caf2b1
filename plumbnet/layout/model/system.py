"""A building's piping as the author wrote it: parts and the pipes between them, typed and in SI."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from plumbnet.layout.model.acceptance import Acceptance
from plumbnet.layout.model.change import Change, Scenario
from plumbnet.layout.model.changeable import Changeable
from plumbnet.layout.model.circuit import Circuit
from plumbnet.layout.model.job import Job
from plumbnet.layout.model.part import Part
from plumbnet.layout.presentation import Shown
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Fault, LayoutError


class End(NamedTuple):
    """One end of a pipe: a port of a part."""

    part: str
    port: str


@dataclass(frozen=True, slots=True)
class Pipe:
    """A pipe from `start` to `end`, in the direction the author wrote.

    `volume_m3` is the water in it, `length_m` and `tube` (as in the tube tables) what the author gave of
    it. `line` is the line of the run, or that of the part that it is inside; 0 for the tapping of a relief valve
    written inside a heater. `asked` is the line that asked for the instance of an assembly around it; 0 outside any.
    """

    start: End
    end: End
    volume_m3: float = 0.0
    length_m: float | None = None
    tube: str | None = None
    line: int = 0
    asked: int = 0

    @property
    def ends(self) -> tuple[End, End]:
        """Start and end."""
        return self.start, self.end

    @property
    def name(self) -> str:
        """The pipe named by the parts it joins."""
        return f"{self.start.part} -> {self.end.part}"


@dataclass(frozen=True, slots=True)
class Instance:
    """A part opened: the whole as it was declared, and what stands in the layout for it, each part by its full name.

    `ports` says at which port inside each port of the whole is.
    """

    whole: Part
    parts: Mapping[str, Part]
    written: Mapping[str, Mapping[str, object]]
    pipes: tuple[Pipe, ...]
    ports: Mapping[End, End]

    def outdoors(self, end: End) -> End:
        """A port inside as a port of the whole, the first of those that are there; any other as it is."""
        return next((outer for outer, inner in self.ports.items() if inner == end), end)


@dataclass(frozen=True, slots=True)
class Assembled:
    """An instance of an assembly: its name, the line that asked for the instance, the height that counts from there.

    `lift` is that height as it would be written, None where nothing is said of it.
    """

    assembly: str
    line: int = 0
    lift: str | float | None = None


@dataclass(frozen=True, slots=True)
class AssemblyFile:
    """A file that brings assemblies: what messages call it, and its bytes."""

    file: str
    data: bytes = field(repr=False)


@dataclass(frozen=True, slots=True)
class Record:
    """Where a system came from: the file's name, SHA-256 and text, the line of each part.

    `rules_at` is the place of its rules, or of those for each circuit; `accept_at` that of the name in each of its
    acceptances. `shelf` are the files that brought assemblies.
    """

    file: str = ""
    sha256: str = ""
    lines: Mapping[str, int] = field(default_factory=dict)
    rules_at: Mapping[Circuit, tuple[int, int]] = field(default_factory=dict)
    accept_at: tuple[tuple[int, int], ...] = ()
    text: str = field(default="", repr=False)
    shelf: tuple[AssemblyFile, ...] = ()


@dataclass(frozen=True, slots=True)
class System(Shown, Changeable):
    """A building's piping.

    `parts` by name, in the order of the file; `pipes` between their ports; `instances`, by its own name, what was
    written as one part and opened into some of these; `units` those of the file; `rules` the name of a profile, or of
    one for some circuits; `written` the fields of each part as its author wrote them; `tank_sizes_m3` the sizes the
    author can buy (empty: the table of nominal sizes); `job` what a cover says; `faulty_scenarios`
    those of the file that cannot be made, with why; `assembled`, by its full name, each instance of an assembly;
    `groups` the labels of what stands for many, as `rooms` for `rooms/1` and `rooms/2`.
    """

    parts: Mapping[str, Part]
    pipes: tuple[Pipe, ...]
    title: str = ""
    units: Units = "us"
    rules: str | Mapping[Circuit, str] | None = None
    written: Mapping[str, Mapping[str, object]] = field(default_factory=dict)
    scenarios: Mapping[str, Scenario] = field(default_factory=dict)
    accept: tuple[Acceptance, ...] = ()
    tank_sizes_m3: tuple[float, ...] = ()
    job: Job = field(default_factory=Job)
    record: Record = field(default_factory=Record)
    instances: Mapping[str, Instance] = field(default_factory=dict)
    faulty_scenarios: Mapping[str, tuple[Fault, ...]] = field(default_factory=dict)
    assembled: Mapping[str, Assembled] = field(default_factory=dict)
    groups: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    _pipes_at: dict[str, list[Pipe]] = field(default_factory=dict, init=False, repr=False, compare=False)

    def pipes_at(self, part: str) -> Sequence[Pipe]:
        """The pipes with an end at a part, in the order of the file; gathered once for all parts."""
        if not self._pipes_at:
            for pipe in self.pipes:
                for name in dict.fromkeys(end.part for end in pipe.ends):
                    self._pipes_at.setdefault(name, []).append(pipe)
        return self._pipes_at.get(part, ())

    def changes_of(self, scenario: str) -> tuple[Change, ...]:
        """The changes that make a scenario of the file, those of the one that it builds on first."""
        found: tuple[Change, ...] = ()
        name: str | None = scenario
        while name is not None:
            found = (*self.scenarios[name].change, *found)
            name = self.scenarios[name].after
        return found

    def scenario_error(self, *names: str) -> LayoutError:
        """What is wrong with scenarios of the file that cannot be made, each mistake under its line."""
        faults = (fault for name in names for fault in self.faulty_scenarios[name])
        return LayoutError(self.record.file, faults, self.record.text)

    def line_of(self, part: str) -> int:
        """Line on which `part`, or the heater that carries it, was declared; 0 if it came from no file."""
        return self.record.lines.get(part) or self.record.lines.get(part.rpartition("/")[0], 0)

    def instance_around(self, part: str) -> str | None:
        """The innermost instance of an assembly that a part is in, by its full name; None outside any."""
        around = part.rpartition("/")[0] if self.assembled else ""
        while around and around not in self.assembled:
            around = around.rpartition("/")[0]
        return around or None

    def asked_line_of(self, part: str) -> int:
        """The line that asked for the innermost instance that a part is in; 0 outside any."""
        around = self.instance_around(part)
        return 0 if around is None else self.assembled[around].line
