"""A diagram to its chains: pipe after pipe through devices in line, between two ends that stand for themselves."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from plumbnet.drawing.items import BuildingFacts, Diagram, Link
from plumbnet.drawing.palette import Service
from plumbnet.layout.model import End

_IN_AND_OUT = 2


@dataclass(frozen=True, slots=True)
class Chain:
    """Pipes and the devices between them, from the lower end to the higher one; equal heights as the author drew it."""

    number: int
    low: End
    high: End
    devices: tuple[str, ...]
    links: tuple[Link, ...]
    service: Service

    @property
    def ends(self) -> tuple[End, End]:
        """The lower end, then the higher one."""
        return self.low, self.high

    @property
    def turned(self) -> "Chain":
        """The same with its ends changed over."""
        return replace(self, low=self.high, high=self.low, devices=self.devices[::-1], links=self.links[::-1])

    def begins_at(self, end: End) -> bool:
        """Whether water leaves that end into the chain."""
        return (self.links[0] if end == self.low else self.links[-1]).start == end


def chains_of(diagram: Diagram, building: BuildingFacts, height: Mapping[str, float]) -> tuple[Chain, ...]:
    """Every pipe in one chain, in the order of the items."""
    done: set[int] = set()
    found: list[Chain] = []
    for name in diagram.items:
        if _is_passed(diagram, building, name):
            continue
        for first in diagram.links_at[name]:
            if first.number not in done:
                chain = _followed(diagram, building, first, name, len(found))
                done.update(link.number for link in chain.links)
                found.append(chain.turned if height[chain.low.part] > height[chain.high.part] else chain)
    return tuple(found)


def _followed(diagram: Diagram, building: BuildingFacts, first: Link, name: str, number: int) -> Chain:
    links, devices, at = [first], list[str](), first.far(name)
    while _is_passed(diagram, building, at.part):
        devices.append(at.part)
        (following,) = (link for link in diagram.links_at[at.part] if link is not links[-1])
        links.append(following)
        at = following.far(at.part)
    service = Service.RETURN if any(link.service is Service.RETURN for link in links) else first.service
    return Chain(number, first.near(name), at, tuple(devices), tuple(links), service)


def _is_passed(diagram: Diagram, building: BuildingFacts, name: str) -> bool:
    """Whether it is a device in line that two pipes join, and no equipment."""
    links = diagram.links_at[name]
    is_between = len(links) == _IN_AND_OUT and not any(link.is_round for link in links)
    return is_between and diagram.items[name].symbol.is_in_line and not building.parts[name].is_equipment
