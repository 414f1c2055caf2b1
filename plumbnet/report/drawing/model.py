"""What is drawn, before it has a place: items with a symbol and words, and links between their ports."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.discover import discover
from plumbnet.layout.part import Part, Role
from plumbnet.layout.system import End, System
from plumbnet.report.drawing import symbols
from plumbnet.report.drawing.symbol import Symbol, symbol_named
from plumbnet.report.palette import Service
from plumbnet.rules.facts import Verdict

discover(symbols)


@dataclass(frozen=True, slots=True)
class Item:
    """A part, or a quiet branch folded together, with its ports and the lines of words beside it.

    `verdict` stands below the words of a heater; `is_ringed` marks what stops the water,
    `is_on_roof` an open tank that stands higher than all that it feeds.
    """

    name: str
    symbol: Symbol
    ports: tuple[str, ...]
    lines: tuple[str, ...] = ()
    elevation_m: float = 0.0
    is_source: bool = False
    verdict: Verdict | None = None
    is_ringed: bool = False
    is_on_roof: bool = False

    @property
    def words(self) -> tuple[str, ...]:
        """All lines beside it."""
        return self.lines if self.verdict is None else (*self.lines, self.verdict.value.upper())


@dataclass(frozen=True, slots=True)
class Link:
    """A pipe to be drawn, and its number among the links of its model."""

    number: int
    start: End
    end: End
    service: Service

    @property
    def ends(self) -> tuple[End, End]:
        """Start and end."""
        return self.start, self.end

    def far(self, name: str) -> End:
        """The end that is not at the part `name`."""
        return self.end if self.start.part == name else self.start

    def near(self, name: str) -> End:
        """The end at the part `name`."""
        return self.start if self.start.part == name else self.end

    @property
    def is_round(self) -> bool:
        """Whether it joins two ports of one part."""
        return self.start.part == self.end.part


@dataclass(frozen=True)
class Model:
    """Items by name, in the order of the file, and the links between them.

    `origins` are the ports of parts that stand behind the ports of folded branches.
    """

    items: Mapping[str, Item]
    links: tuple[Link, ...]
    origins: Mapping[End, End] = field(default_factory=dict)

    def origin(self, end: End) -> End:
        """The port of the layout that stands behind an end."""
        return self.origins.get(end, end)

    @cached_property
    def links_at(self) -> Mapping[str, list[Link]]:
        """The links of each item, each once."""
        found: dict[str, list[Link]] = defaultdict(list)
        for link in self.links:
            for name in dict.fromkeys((link.start.part, link.end.part)):
                found[name].append(link)
        return found


def model_of(
    system: System,
    services: Sequence[Service],
    *,
    notes: Mapping[str, tuple[str, ...]],
    verdicts: Mapping[str, Verdict],
    ringed: Collection[str],
) -> Model:
    """The model of a system with every part drawn for itself, and the `ringed` ones ringed."""
    # A vent may rise above the tank it spills into.
    standing = [part.elevation_m for part in system.parts.values() if not _is_open(part) or part.source()]
    highest = max(standing, default=0.0)
    items = {
        name: Item(
            name,
            symbol_named(part.drawn_as()),
            part.port_names(),
            notes.get(name, ()),
            part.elevation_m,
            part.source() is not None,
            verdicts.get(name),
            name in ringed,
            _is_open(part) and part.elevation_m >= highest > 0.0,
        )
        for name, part in system.parts.items()
    }
    pairs = zip(system.pipes, services, strict=True)
    links = tuple(Link(number, pipe.start, pipe.end, service) for number, (pipe, service) in enumerate(pairs))
    return Model(items, links)


def _is_open(part: Part) -> bool:
    """Whether water in it stands open to the air, whatever is drawn."""
    return not part.draws_at() and any(outlet.role is Role.AIR for outlet in part.outlets())


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


def stacks(model: Model) -> tuple[Stack, ...]:
    """What is drawn standing on its host instead of at the end of a run: tanks, relief valves, vents.

    Between it and its host may be a valve or the like; the host is a joint, or a tapping at the crown of a vessel.
    """
    found: list[Stack] = []
    taken: dict[End, int] = defaultdict(int)
    for item in model.items.values():
        stack = _stack(model, item) if item.symbol.hangs and len(model.links_at[item.name]) == 1 else None
        if stack is None:
            continue
        room = _MOST_ON_A_JOINT if model.items[stack.host.part].symbol.is_joint else 1
        if taken[stack.host] < room and _keeps_a_pipe(model, stack, taken[stack.host]):
            taken[stack.host] += 1
            found.append(stack)
    return tuple(found)


def _stack(model: Model, leaf: Item) -> Stack | None:
    names, links = [leaf.name], list[Link]()
    while len(names) <= _TALLEST:
        (link,) = (link for link in model.links_at[names[-1]] if link not in links)
        host = link.far(names[-1])
        links.append(link)
        item = model.items[host.part]
        if item.symbol.is_joint or host.port in item.symbol.tops:
            return Stack(host, tuple(reversed(names)), tuple(reversed(links)))
        if not item.symbol.is_in_line or len(model.links_at[item.name]) < _IN_AND_OUT or item.name in names:
            return None
        names.append(item.name)
    return None


def _keeps_a_pipe(model: Model, stack: Stack, before: int) -> bool:
    """Whether the host has a pipe left that is no stack."""
    return len(model.links_at[stack.host.part]) > before + 1 or not model.items[stack.host.part].symbol.is_joint


def layered(model: Model, standing: Sequence[Stack]) -> Model:
    """The model without what stands in stacks."""
    gone = {name for stack in standing for name in stack.names}
    items = {name: item for name, item in model.items.items() if name not in gone}
    return Model(items, tuple(_between(model.links, gone)), model.origins)


def _between(links: Sequence[Link], gone: set[str]) -> Iterator[Link]:
    for link in links:
        if link.start.part not in gone and link.end.part not in gone:
            yield link
