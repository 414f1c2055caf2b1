"""Where a tank is joined to the piping: at a fitting that is there, or at a tee set into a pipe; as changes."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.required_tank import TankPlace, tank_place
from plumbnet.layout.edits import HIGHEST_WRITTEN_PA, change_of, height_text, new_name, pressure_text
from plumbnet.layout.model import Change, End, Pipe, System
from plumbnet.layout.units import PRESSURE, parse_measure
from plumbnet.network.piping import Node
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.remedy_context import RemedyContext


@dataclass(frozen=True, slots=True)
class TankJoint:
    """A place to join a tank: the fitting `at`, in words `where`, and the changes that make it if it is new.

    `node` stands in its water; `elevation_m` is its height and `charge` the line pressure there, as written.
    """

    node: Node
    at: str
    where: str
    makes: tuple[Change, ...]
    elevation_m: float
    static_pa: float
    charge: str
    """As it stands in a file."""
    why: str = ""
    """Why there, as what follows "it is"."""

    def charge_pa(self, system: System) -> float:
        """The charge as written, gauge at the tank."""
        return parse_measure(self.charge, PRESSURE, system.units)


def tank_joints(scene: RemedyContext, heater: HeaterFacts) -> Iterator[TankJoint]:
    """Where a heater's tank belongs: in its cold pipe; and where its water stands worse off, there as well."""
    network = scene.network
    heated = scene.heated[heater.name]
    nodes = [tank_place(network, heated, scene.report.rules)]
    zones = {network.zoning.zone_of[nodes[0].node]}
    for piece in heated.pieces:
        zone = network.zoning.zone_of[piece.node]
        if zone not in zones:
            zones.add(zone)
            nodes.append(TankPlace(network.piping.ports[piece.node].part, piece.node))
    for place in nodes:
        joint = joint_at(scene, place, base=heater.name)
        if joint is not None:
            yield joint


def joint_at(scene: RemedyContext, place: TankPlace, *, base: str) -> TankJoint | None:
    """The joint at a place: the fitting there, or a new tee in its pipe; None where no pipe or no water is.

    A new tee is called after `base`. None, too, where the line stands so high that no tank is charged to it.
    """
    network, system = scene.network, scene.system
    node, end = place.node, network.piping.ports[place.node]
    static_pa = network.standing.static_pa[network.zoning.zone_of[node]]
    if static_pa is None:
        return None
    part = system.parts[end.part]
    own_pa = static_pa - network.piping.heads_pa[node]
    if own_pa > HIGHEST_WRITTEN_PA:
        return None
    charge = pressure_text(system, max(own_pa, 0.0))
    if part.is_fitting and place.name == end.part:
        return TankJoint(node, end.part, f"at {end.part}", (), part.elevation_m, own_pa, charge, place.why)
    pipe = _pipe_at(scene, place)
    if pipe is None:
        return None
    tee = new_name(system, base, "tee", beside=(pipe.start.part, pipe.end.part))
    fields = {
        "part": tee,
        "kind": "tee",
        "between": between(system, pipe.start, pipe.end),
        **height_text(system, part.elevation_m, tee),
    }
    where = f"at a new tee in the pipe from {pipe.start.part} to {pipe.end.part}"
    return TankJoint(node, tee, where, (change_of("insert", fields),), part.elevation_m, own_pa, charge, place.why)


def _pipe_at(scene: RemedyContext, place: TankPlace) -> Pipe | None:
    """The pipe of a place: that of its name at its node, or the one that ends there."""
    end = scene.network.piping.ports[place.node]
    named = (pipe for pipe in scene.system.pipes_at(end.part) if pipe.name == place.name and end in pipe.ends)
    return next(named, scene.network.pipe_at.get(end))


def between(system: System, first: End, second: End) -> list[str]:
    """Two neighbours as a change names them, with their ports where several pipes join the two parts."""
    names = {first.part, second.part}
    alike: list[Pipe] = [pipe for pipe in system.pipes_at(first.part) if {end.part for end in pipe.ends} == names]
    if len(alike) == 1:
        return [first.part, second.part]
    return [f"{end.part}.{end.port}" for end in (first, second)]
