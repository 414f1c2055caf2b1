"""What pumps without a check hold counted as height, so that zones which they join stand level."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from networkx.utils import UnionFind

from plumbnet.network.piping import Gate, PotentialStep, Way, Zone, Zoning, fitted, zoning_of
from plumbnet.network.pressure.static_pressure import StaticPressures


def levelled(zoning: Zoning, standing: StaticPressures) -> tuple[Zoning, StaticPressures]:
    """Zones and pressures at a datum that water behind a pump without a check shares with the water before it.

    Such a pump is a pipe with a head: water goes either way, and what stands behind it stays above what stands before
    it by as much as at rest. Counted as height it opens no gate and bars no way. What other gates join has one datum
    too, as far as heights fit; where a gate leads past a pump they do not, and its ways say by how much.
    """
    joints = list(_joints(zoning, standing))
    if not joints:
        return zoning, standing
    lifts_pa = fitted(range(zoning.zone_count), joints + _others(zoning)).lifts_pa
    static_pa, cut_in_pa, usual_pa, least_pa = (
        [_raised(pressure_pa, lifts_pa[zone]) for zone, pressure_pa in enumerate(each)]
        for each in (standing.static_pa, standing.cut_in_pa, standing.usual_pa, standing.least_pa)
    )
    level: UnionFind[Zone] = UnionFind()
    for joint in joints:
        level.union(joint.near, joint.far)
    for zones in level.to_sets():  # to the last bit, and not below what holds one of them
        highest_pa = max(pressure_pa for zone in zones if (pressure_pa := static_pa[zone]) is not None)
        for zone in zones:
            static_pa[zone] = highest_pa
    raised = replace(standing, static_pa=static_pa, cut_in_pa=cut_in_pa, usual_pa=usual_pa, least_pa=least_pa)
    return _lifted(zoning, lifts_pa), raised


def _joints(zoning: Zoning, standing: StaticPressures) -> Iterator[PotentialStep]:
    """What each pump without a check holds between two zones in which water stands."""
    for gate in zoning.piping.gates:
        near, far = zoning.zone_of[gate.start], zoning.zone_of[gate.end]
        near_pa, far_pa = standing.static_pa[near], standing.static_pa[far]
        if gate.is_joint and near != far and near_pa is not None and far_pa is not None:
            yield PotentialStep(near, far, near_pa - far_pa)


def _others(zoning: Zoning) -> list[PotentialStep]:
    """All other gates, those first that let water pass; by name, so that the order of the file settles nothing."""
    gates = sorted(
        (gate for gate in zoning.piping.gates if not gate.is_joint), key=lambda gate: (gate.is_shut, gate.part)
    )
    return [PotentialStep(zoning.zone_of[gate.start], zoning.zone_of[gate.end], 0.0) for gate in gates]


def _raised(pressure_pa: float | None, lift_pa: float) -> float | None:
    return None if pressure_pa is None else pressure_pa + lift_pa


def _lifted(zoning: Zoning, lifts_pa: Mapping[Zone, float]) -> Zoning:
    """The zones with everything in them at the lift of its zone."""
    piping, zone_of = zoning.piping, zoning.zone_of
    heads_pa = [head_pa + lifts_pa[zone] for zone, head_pa in zip(zone_of, piping.heads_pa, strict=True)]
    gates = [_between(gate, lifts_pa[zone_of[gate.start]], lifts_pa[zone_of[gate.end]]) for gate in piping.gates]
    lifted = zoning_of(replace(piping, heads_pa=heads_pa, gates=gates))
    for zone, sites in zoning.sites.items():  # added as the static pressure was, so that what was equal stays so
        lifted.sites[zone] = [replace(site, opens_pa=site.opens_pa + lifts_pa[zone]) for site in sites]
    return lifted


def _between(gate: Gate, start_pa: float, end_pa: float) -> Gate:
    """A gate whose ends stand at two lifts."""
    higher_pa = 0.0 if gate.is_joint else start_pa - end_pa
    return replace(
        gate, forward=_way(gate.forward, higher_pa, end_pa), backward=_way(gate.backward, -higher_pa, start_pa)
    )


def _way(way: Way | None, higher_pa: float, far_pa: float) -> Way | None:
    return None if way is None else Way(way.opens_pa + higher_pa, way.below_pa + far_pa)
