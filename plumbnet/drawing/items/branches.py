"""A diagram too large to read to one in which each quiet branch is one symbol with a count."""

from collections import defaultdict, deque
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace

from networkx.utils import UnionFind

from plumbnet.drawing.items.item import Diagram, Item, Link
from plumbnet.drawing.symbols import SYMBOLS
from plumbnet.layout.model import End

MOST_ITEMS = 300
"""Up to so many items everything is drawn for itself."""


def abridged(diagram: Diagram, keep: Collection[str] = ()) -> Diagram:
    """The diagram with every dead end of at least two quiet items in one symbol, but for the items in `keep`.

    A fixture whose hot and cold do not meet is an end of both. What is in one symbol hangs together.
    """
    quiet = {name for name, item in diagram.items.items() if item.is_quiet and name not in keep}
    branches = _Branches(diagram, quiet)
    groups = [group for group in branches.groups() if len(group) > 1]
    if not groups:
        return diagram
    stand_in = {name: _branch_name(group) for group in groups for name in group}
    links = _links(diagram, stand_in)
    ports: dict[str, list[str]] = defaultdict(list)
    for link in links:
        for end in (link.start, link.end):
            ports[end.part].append(end.port)
    counts = {_branch_name(group): len(group) for group in groups}
    items: dict[str, Item] = {}
    for name, item in diagram.items.items():
        branch = stand_in.get(name)
        if branch is None:
            items[name] = item
        elif branch not in items:
            words = (f"{counts[branch]} parts, folded",)
            symbol = SYMBOLS["quiet_branch"]
            items[branch] = Item(branch, symbol, tuple(ports[branch]), words, elevation_m=item.elevation_m)
    was = {link.number: link.ends for link in diagram.links}
    origin = {end: old for link in links for end, old in zip(link.ends, was[link.number], strict=True)}
    return Diagram(items, tuple(links), {end: old for end, old in origin.items() if end != old})


def _branch_name(group: Collection[str]) -> str:
    """A name no part can have."""
    first, *others = group
    return f"{first}+{len(others)}"


def _links(diagram: Diagram, stand_in: Mapping[str, str]) -> list[Link]:
    """The links outside branches, one from each branch to each port it hangs on; their ends at the branch numbered."""
    found: list[Link] = []
    hung: set[tuple[str, End]] = set()
    count: dict[str, int] = defaultdict(int)
    for link in diagram.links:
        start, end = stand_in.get(link.start.part), stand_in.get(link.end.part)
        if start is None and end is None:
            found.append(link)
        elif start is None or end is None:
            branch, host = (start, link.end) if start is not None else (end, link.start)
            if branch is None or (branch, host) in hung:
                continue
            hung.add((branch, host))
            count[branch] += 1
            own = End(branch, f"branch {count[branch]}")
            found.append(replace(link, start=own) if start is not None else replace(link, end=own))
    return found


@dataclass(slots=True)
class _Branches:
    """Takes quiet ends off, one after the other, as long as there are any."""

    diagram: Diagram
    quiet: Collection[str]
    degree: dict[End, int] = field(default_factory=lambda: defaultdict(int))
    gone: dict[str, None] = field(default_factory=dict)
    _root: dict[End, End] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for name, item in self.diagram.items.items():
            joined: UnionFind[str] = UnionFind(item.ports)
            for one, other in item.ways:
                joined.union(one, other)
            for port in item.ports:
                self._root[End(name, port)] = End(name, joined[port])
        for link in self.diagram.links:
            for end in link.ends:
                self.degree[self._root[end]] += 1

    def groups(self) -> list[list[str]]:
        """Quiet ends that hang together, each in the order of the file."""
        self._take_off()
        together: UnionFind[str] = UnionFind(self.gone)
        for link in self.diagram.links:
            if link.start.part in self.gone and link.end.part in self.gone:
                together.union(link.start.part, link.end.part)
        found: dict[str, list[str]] = defaultdict(list)
        for name in self.diagram.items:
            if name in self.gone:
                found[together[name]].append(name)
        return list(found.values())

    def _take_off(self) -> None:
        queue = deque(name for name in self.diagram.items if self._is_end(name))
        while queue:
            name = queue.popleft()
            if name in self.gone:
                continue
            self.gone[name] = None
            for link in self.diagram.links_at[name]:
                far = link.far(name)
                if far.part not in self.gone:
                    self.degree[self._root[far]] -= 1
                    if self._is_end(far.part):
                        queue.append(far.part)

    def _is_end(self, name: str) -> bool:
        """Whether no water passes on through a quiet part."""
        roots = {self._root[End(name, port)] for port in self.diagram.items[name].ports}
        return name in self.quiet and all(self.degree[root] <= 1 for root in roots)
