"""A component to its doors, where risers join it: a joint has one in a branch, one for each service in a plant."""

from collections import defaultdict
from collections.abc import Mapping
from typing import NamedTuple

from plumbnet.drawing.palette import Service
from plumbnet.drawing.riser.structure import Component, RiserEnd, Structure

SERVICE_RANK: Mapping[Service, int] = {Service.RETURN: 0, Service.COLD: 1, Service.HOT: 2, Service.MIXED: 3}
"""Sorts services from what stands back; the hottest last."""


class DoorKey(NamedTuple):
    """A joint, or a port of anything else; with the service where a plant has a door to each."""

    part: str
    port: str = ""
    service: Service | None = None


def door_key(structure: Structure, component: Component, each: RiserEnd) -> DoorKey:
    """The door by which the end of a riser joins a component."""
    if not structure.diagram.items[each.end.part].symbol.is_joint:
        return DoorKey(each.end.part, each.end.port)
    return DoorKey(each.end.part, "", each.chain.service if component.is_plant else None)


def doors_of(structure: Structure, component: Component) -> dict[DoorKey, list[RiserEnd]]:
    """The risers at each door, those of supply first; hot doors before cold ones."""
    met: dict[DoorKey, list[RiserEnd]] = defaultdict(list)
    for each in component.ends:
        met[door_key(structure, component, each)].append(each)
    for ends in met.values():
        ends.sort(key=lambda each: each.chain.service is Service.RETURN)
    return dict(sorted(met.items(), key=lambda door: -SERVICE_RANK[door[1][0].chain.service]))
