"""A model too large to read to one in which quiet branches are folded, each into one symbol with a count."""

from collections import defaultdict, deque
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace

from networkx.utils import UnionFind

from plumbnet.layout.part import Free
from plumbnet.layout.system import End, System
from plumbnet.report.drawing.model import Item, Link, Model
from plumbnet.report.drawing.symbol import SYMBOLS

MOST_PARTS = 300
"""Up to so many parts everything is drawn for itself."""


def quiet(system: System) -> frozenset[str]:
    """Parts that neither heat nor supply water, let none out, and neither stop it nor can be shut."""
    return frozenset(
        name
        for name, part in system.parts.items()
        if part.heat() is None
        and part.source() is None
        and part.cushion() is None
        and not part.is_valve()
        and not any(True for _ in part.outlets())
        and all(isinstance(passage, Free) for passage in part.passages())
    )


def folded(model: Model, system: System, keep: Collection[str] = ()) -> Model:
    """The model with every dead end of at least two quiet parts folded, but for the parts in `keep`.

    A fixture whose hot and cold do not meet is an end of both. What is folded together hangs together.
    """
    branch = _Branches(model, system, quiet(system) - set(keep))
    groups = [group for group in branch.groups() if len(group) > 1]
    if not groups:
        return model
    stand_in = {name: _fold_name(group) for group in groups for name in group}
    links = _links(model, stand_in)
    ports: dict[str, list[str]] = defaultdict(list)
    for link in links:
        for end in (link.start, link.end):
            ports[end.part].append(end.port)
    counts = {_fold_name(group): len(group) for group in groups}
    items: dict[str, Item] = {}
    for name, item in model.items.items():
        fold = stand_in.get(name)
        if fold is None:
            items[name] = item
        elif fold not in items:
            words = (f"{counts[fold]} parts, folded",)
            items[fold] = Item(fold, SYMBOLS["quiet_branch"], tuple(ports[fold]), words, item.elevation_m)
    origin = {end: old for link, was in _pairs(model, links) for end, old in zip(link.ends, was.ends, strict=True)}
    return Model(items, tuple(links), {end: old for end, old in origin.items() if end != old})


def _fold_name(group: Collection[str]) -> str:
    """A name no part can have."""
    first, *others = group
    return f"{first}+{len(others)}"


def _links(model: Model, stand_in: Mapping[str, str]) -> list[Link]:
    """The links outside folds, one from each fold to each port it hangs on; their ends at the fold numbered."""
    found: list[Link] = []
    hung: set[tuple[str, End]] = set()
    count: dict[str, int] = defaultdict(int)
    for link in model.links:
        start, end = stand_in.get(link.start.part), stand_in.get(link.end.part)
        if start is None and end is None:
            found.append(link)
        elif start is None or end is None:
            fold, host = (start, link.end) if start is not None else (end, link.start)
            if fold is None or (fold, host) in hung:
                continue
            hung.add((fold, host))
            count[fold] += 1
            own = End(fold, f"branch {count[fold]}")
            found.append(replace(link, start=own) if start is not None else replace(link, end=own))
    return found


def _pairs(model: Model, links: Collection[Link]) -> Iterator[tuple[Link, Link]]:
    by_number = {link.number: link for link in model.links}
    yield from ((link, by_number[link.number]) for link in links)


@dataclass(slots=True)
class _Branches:
    """Takes quiet ends off, one after the other, as long as there are any."""

    model: Model
    system: System
    quiet: Collection[str]
    degree: dict[End, int] = field(default_factory=lambda: defaultdict(int))
    gone: dict[str, None] = field(default_factory=dict)
    _root: dict[End, End] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for name in self.model.items:
            part = self.system.parts[name]
            joined: UnionFind[str] = UnionFind(part.port_names())
            for passage in part.passages():
                if isinstance(passage, Free):
                    joined.union(passage.a, passage.b)
            for port in part.port_names():
                self._root[End(name, port)] = End(name, joined[port])
        for link in self.model.links:
            for end in link.ends:
                self.degree[self._root[end]] += 1

    def groups(self) -> list[list[str]]:
        """Quiet ends that hang together, each in the order of the file."""
        self._take_off()
        together: UnionFind[str] = UnionFind(self.gone)
        for link in self.model.links:
            if link.start.part in self.gone and link.end.part in self.gone:
                together.union(link.start.part, link.end.part)
        found: dict[str, list[str]] = defaultdict(list)
        for name in self.model.items:
            if name in self.gone:
                found[together[name]].append(name)
        return list(found.values())

    def _take_off(self) -> None:
        queue = deque(name for name in self.model.items if self._is_end(name))
        while queue:
            name = queue.popleft()
            if name in self.gone:
                continue
            self.gone[name] = None
            for link in self.model.links_at[name]:
                far = link.far(name)
                if far.part not in self.gone:
                    self.degree[self._root[far]] -= 1
                    if self._is_end(far.part):
                        queue.append(far.part)

    def _is_end(self, name: str) -> bool:
        """Whether no water passes on through a quiet part."""
        roots = {self._root[End(name, port)] for port in self.system.parts[name].port_names()}
        return name in self.quiet and all(self.degree[root] <= 1 for root in roots)
