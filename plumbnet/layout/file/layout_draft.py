"""Parts and pipes of a layout as they are read: what comes with a part, what a port has already."""

from collections import ChainMap
from collections.abc import Mapping
from dataclasses import dataclass, field

from plumbnet.layout.file.document import RunWithPipe
from plumbnet.layout.model import End, Instance, Part, Pipe, fixed_to, instance_of, occupied
from plumbnet.layout.units import Units, UnknownTube, tube

NO_LENGTH = ("a pipe size says nothing without a length", "for example length: 10 ft")


class NoVolume(ValueError):
    """The water in a run cannot be told; the text says why, and `hint` what would be right."""

    def __init__(self, text: str, hint: str = "") -> None:
        super().__init__(text)
        self.hint = hint


@dataclass(slots=True)
class LayoutDraft:
    """What has been read so far; `wholes` are parts that opened into several, `taken` ports that have their pipe."""

    units: Units = "us"
    parts: dict[str, Part] = field(default_factory=dict)
    written: dict[str, Mapping[str, object]] = field(default_factory=dict)
    pipes: list[Pipe] = field(default_factory=list)
    taken: dict[End, Pipe] = field(default_factory=dict)
    instances: dict[str, Instance] = field(default_factory=dict)
    wholes: dict[str, Part] = field(default_factory=dict)

    def place(self, name: str, part: Part, written: Mapping[str, object], line: int) -> None:
        """A part with what comes fixed to it, or what it opens into."""
        instance = instance_of(name, part, written, self.units, line)
        if instance is None:
            self.parts[name] = part
            self.written[name] = written
            fixed, pipes = fixed_to(name, part)
        else:
            self.instances[name], self.wholes[name] = instance, instance.whole
            self.written.update(instance.written)
            fixed, pipes = dict(instance.parts), list(instance.pipes)
        self.parts.update(fixed)
        self.pipes += pipes
        self.taken |= occupied(pipes)

    def known(self) -> Mapping[str, Part]:
        """All that a run can name."""
        return ChainMap(self.parts, self.wholes) if self.wholes else self.parts

    def is_crowded(self, end: End) -> bool:
        """Whether a port takes one pipe, and has it."""
        return end in self.taken and end.port not in self.parts[end.part].shared

    def lay(self, pipe: Pipe) -> None:
        """A pipe between two ports."""
        self.taken[pipe.start] = self.taken[pipe.end] = pipe
        self.pipes.append(pipe)


def chain_volume_m3(run: RunWithPipe) -> float:
    """Water in the whole chain: as written, or from pipe and length, or nothing known. Raises NoVolume."""
    if run.pipe is None:
        return run.volume_m3 or 0.0
    try:
        bore = tube(run.pipe)
    except UnknownTube as error:
        raise NoVolume(str(error)) from None
    if run.volume_m3 is not None:
        return run.volume_m3
    if run.length_m is None:
        raise NoVolume(*NO_LENGTH)
    return bore.volume_m3_per_m * run.length_m
