"""A diagram to the stacks that stand on their hosts, and to what is left without them."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.drawing.items.item import Diagram, Item, Link
from plumbnet.layout.model import End


@dataclass(frozen=True, slots=True)
class Stack:
    """Accessories that rise from a host one above the other, or hang below it; `names` from the host outward."""

    host: End
    names: tuple[str, ...]
    links: tuple[Link, ...]


_IN_AND_OUT = 2
_TALLEST = 3
"""Parts in a stack, at most."""
_MOST_ON_A_JOINT = 4
"""Stacks on one joint, at most."""


def stacks(diagram: Diagram) -> tuple[Stack, ...]:
    """What is drawn standing on its host instead of at the end of a run: tanks, relief valves, vents.

    Between it and its host may be a valve or the like; the host is a joint, or a tapping at the crown of a vessel.
    """
    found: list[Stack] = []
    taken: dict[End, int] = defaultdict(int)
    for item in diagram.items.values():
        stack = _stack(diagram, item) if item.symbol.hangs and len(diagram.links_at[item.name]) == 1 else None
        if stack is None:
            continue
        room = _MOST_ON_A_JOINT if diagram.items[stack.host.part].symbol.is_joint else 1
        if taken[stack.host] < room and _keeps_a_pipe(diagram, stack, taken[stack.host]):
            taken[stack.host] += 1
            found.append(stack)
    return tuple(found)


def _stack(diagram: Diagram, leaf: Item) -> Stack | None:
    names, links = [leaf.name], list[Link]()
    while len(names) <= _TALLEST:
        (link,) = (link for link in diagram.links_at[names[-1]] if link not in links)
        host = link.far(names[-1])
        links.append(link)
        item = diagram.items[host.part]
        if item.symbol.is_joint or host.port in item.symbol.tops:
            return Stack(host, tuple(reversed(names)), tuple(reversed(links)))
        if not item.symbol.is_in_line or len(diagram.links_at[item.name]) < _IN_AND_OUT or item.name in names:
            return None
        names.append(item.name)
    return None


def _keeps_a_pipe(diagram: Diagram, stack: Stack, before: int) -> bool:
    """Whether the host has a pipe left that is no stack."""
    return len(diagram.links_at[stack.host.part]) > before + 1 or not diagram.items[stack.host.part].symbol.is_joint


def without_stacks(diagram: Diagram, mounted: Sequence[Stack]) -> Diagram:
    """The diagram without what stands in stacks."""
    gone = {name for stack in mounted for name in stack.names}
    items = {name: item for name, item in diagram.items.items() if name not in gone}
    return Diagram(items, tuple(_between(diagram.links, gone)), diagram.origins)


def _between(links: Sequence[Link], gone: set[str]) -> Iterator[Link]:
    for link in links:
        if link.start.part not in gone and link.end.part not in gone:
            yield link
