"""A network to the water that stands in it, piece by piece, and the walls round each."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from plumbnet.layout.model import End, Part, Pipe
from plumbnet.layout.units import tube
from plumbnet.network import Network
from plumbnet.network.piping import Zone
from plumbnet.physics.vessels import Shell, UnknownWall, heater_shell, material, tube_shell


@dataclass(frozen=True, slots=True)
class _Standing:
    """Water of one part or pipe: the zone it stands in, and its walls."""

    zone: Zone
    shell: Shell


@dataclass(frozen=True)
class StandingWater:
    """All water of a system, by the names that pieces of heated volumes have."""

    pieces: Mapping[str, _Standing]

    @cached_property
    def _by_zone(self) -> dict[Zone, dict[str, Shell]]:
        found: dict[Zone, dict[str, Shell]] = defaultdict(dict)
        for name, piece in self.pieces.items():
            found[piece.zone][name] = piece.shell
        return found

    def beside(self, names: Collection[str], zone: Zone) -> Iterator[Shell]:
        """Walls of all water of a zone but the pieces named."""
        yield from (shell for name, shell in self._by_zone.get(zone, {}).items() if name not in names)


def standing_water(network: Network) -> StandingWater:
    """All water of a network. Linear.

    A heater that keeps its water hot has the typical shell of a storage heater, a pipe of a known metal tube the
    walls of that tube; everything else counts as rigid, plastic pipe too.
    """
    zone_of, node_of = network.zoning.zone_of, network.piping.node_of
    system = network.piping.system
    found = {}
    for name, part in system.parts.items():
        for port, shell in _shells(part):
            found[f"{name}.{port}"] = _Standing(zone_of[node_of[End(name, port)]], shell)
    for number, pipe in enumerate(system.pipes):
        if pipe.volume_m3 > 0.0:
            found[f"pipe {number}"] = _Standing(zone_of[network.piping.pipes[number][0]], _pipe_shell(pipe))
    return StandingWater(found)


def _shells(part: Part) -> Iterator[tuple[str, Shell]]:
    source = part.heat()
    for port, volume_m3 in part.contents():
        is_store = source is not None and port == source.inlet and not source.on_flow
        yield port, heater_shell(volume_m3) if is_store else Shell(volume_m3)


def _pipe_shell(pipe: Pipe) -> Shell:
    if pipe.tube is None:
        return Shell(pipe.volume_m3)
    made = tube(pipe.tube)
    try:
        walls = material(made.material)
    except UnknownWall:
        return Shell(pipe.volume_m3)
    return tube_shell(pipe.volume_m3, walls, inside_m=made.inside_m, wall_m=made.wall_m)
