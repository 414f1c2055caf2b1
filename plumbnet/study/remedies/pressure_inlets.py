"""Where the static pressure of a heater comes in: by which reducers, and by which pipes that have none."""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.model import End, Reducing, System
from plumbnet.network.piping import Crossing
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.remedy_context import RemedyContext


@dataclass(frozen=True, slots=True)
class PressureInlet:
    """What gives a heater its static pressure.

    `reducers` are the last ones before it, `entries` the ports behind which there is none: of a main, of a booster, of
    a filling loop.
    """

    reducers: tuple[str, ...]
    entries: tuple[End, ...]

    @property
    def is_by_reducers(self) -> bool:
        """Whether it comes in by reducers, and no pipe leads past them."""
        return bool(self.reducers) and not self.entries


@dataclass(frozen=True, slots=True)
class Gap:
    """The pipe, by its ends in the direction of flow, in which a new device would stand."""

    near: End
    far: End


def pressure_feed(scene: RemedyContext, heater: HeaterFacts) -> PressureInlet | None:
    """What feeds a heater, searched upstream; None where a well does, whose pump and tank must not be parted."""
    network, parts = scene.network, scene.system.parts
    reducers: dict[str, None] = {}
    entries: dict[End, None] = {}
    seen = set(scene.zones_of(heater.name))
    queue = deque(seen)
    while queue:
        zone = queue.popleft()
        for entry, source in scene.sources_in.get(zone, ()):
            if source.cut_in_pa < source.pressure_pa:
                return None
            entries[entry] = None
        for crossing in _inward(scene, zone):
            if any(isinstance(passage, Reducing) for passage in parts[crossing.part].passages()):
                reducers[crossing.part] = None
            elif crossing.gate.rise_pa > 0.0:
                entries[network.piping.ports[crossing.enters]] = None
            elif crossing.near not in seen:
                seen.add(crossing.near)
                queue.append(crossing.near)
    return PressureInlet(tuple(reducers), tuple(entries))


def _inward(scene: RemedyContext, zone: int) -> Iterator[Crossing]:
    """Gates by which water comes into a zone in their own direction."""
    for crossing in scene.network.zoning.into.get(zone, ()):
        if crossing.way is not None and crossing.is_forward:
            yield crossing


def gap_behind(system: System, entry: End) -> Gap | None:
    """The last pipe behind a port before the piping branches or comes to anything that holds or heats water.

    None where there is no single pipe to begin with, and where a reducer stands in it that creeps: that one is renewed.
    """
    found: Gap | None = None
    while entry is not None:
        pipes = [pipe for pipe in system.pipes_at(entry.part) if entry in pipe.ends]
        if len(pipes) != 1:
            return found
        far = pipes[0].end if pipes[0].start == entry else pipes[0].start
        if system.parts[far.part].creeps_past_pa() is not None:
            return None
        found = Gap(entry, far)
        onward = _through(system, far)
        if onward is None:
            return found
        entry = onward
    return found


def _through(system: System, end: End) -> End | None:
    """The other port of a part that only stands in the pipe; None at a branch, a fixture, or a vessel."""
    part = system.parts[end.part]
    mate = part.mate(end.port)
    ends_here = part.is_fitting or part.is_vessel or any(part.contents()) or part.draws_at() or part.heat()
    return None if mate is None or ends_here else End(end.part, mate)
