"""Two layouts to the parts that kept kind, pipes and values under another name; what is not certain is no rename."""

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from plumbnet.layout.model import Part, System, field_changes
from plumbnet.study.renaming.part_colours import Colours, Side, beside, refined
from plumbnet.study.renaming.part_twins import twins
from plumbnet.study.renaming.surroundings import Surroundings, surroundings

_NEARLY = 1
"""Values in which a part of another name may differ and be the same still."""
_TELLING = 2
"""Values that an author gave, from which on a part is known by them."""


@dataclass(frozen=True, slots=True)
class Rename:
    """A part that has another name than before; `kind` is that of the part."""

    before: str
    after: str
    kind: str


@dataclass(frozen=True, slots=True)
class Alike:
    """Parts in the same place under other names, with other values: they count as gone and as new."""

    before: tuple[str, ...]
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Renames:
    """The parts that have another name than before, in the order of the earlier layout.

    `names` leads from every old name that has to change to the new one. A part that is gone, and whose name another
    one has now, is called there by its name and the word before.
    """

    found: tuple[Rename, ...] = ()
    alike: tuple[Alike, ...] = ()
    names: Mapping[str, str] = field(default_factory=dict)

    def name_now(self, before: str) -> str:
        """What a part of the earlier layout is called now, or would be; what comes fixed to one goes with it."""
        if before in self.names:
            return self.names[before]
        owner, slash, fixed = before.rpartition("/")
        return f"{self.names[owner]}/{fixed}" if slash and owner in self.names else before


def renames(before: System, after: System) -> Renames:
    """The parts of two layouts that only got another name; chains of names and exchanged ones among them.

    A part is the same where its kind, the ports by which it is joined and what stands at the other ends are (under
    their new names), no other part is in the same case, and at most one of its values is another; or where it is
    told by values that are all the same, and has kept a pipe. Of several alike those that kept their names are the
    same; those that are alike in everything, so that nothing depends on which is which, are taken in the order of
    the files. Source: own derivation. Cost: some rounds over what differs.
    """
    search = _Search(surroundings(before), surroundings(after))
    search.run()
    pairs = [(old, search.pairs.get(old, old), part.kind) for old, part in search.old.parts.items()]
    found = tuple(Rename(old, new, kind) for old, new, kind in pairs if old != new)
    return Renames(found, tuple(search.alike()), dict(_names(search, found)))


def _names(search: "_Search", found: Sequence[Rename]) -> Iterator[tuple[str, str]]:
    """Old names to new ones, and gone parts out of the way of who has their name now."""
    taken = {one.after for one in found}
    for one in found:
        yield one.before, one.after
    for name in search.old.parts:
        if name in taken and name not in search.pairs:
            yield name, f"{name} (before)"  # no file can have a part of that name


@dataclass(slots=True)
class _Search:
    """Pairs parts of an `old` and a `new` layout, the surest first."""

    old: Surroundings
    new: Surroundings
    pairs: dict[str, str] = field(default_factory=dict)
    taken: dict[str, str] = field(default_factory=dict)

    def run(self) -> None:
        """Find all pairs; what stays alone is gone, or new."""
        for name in self.old.parts:
            if self._is_as_it_was(name):
                self._pair(name, name)
        if self._may_have_wandered():
            self._pair_equals(refined(self._sides(), repr))
            for old, new in twins(*self._sides()).items():
                self._pair(old, new)
            self._pair_equals(refined(self._sides(), lambda part: part.kind))
            self._pair_only_ones()
            self._pair_outward()
            self._pair_by_name(lambda old, new: old.kind == new.kind)
            self._pair_outward()
        self._pair_by_name(lambda _old, _new: True)

    def alike(self) -> Iterator[Alike]:
        """What is left on both sides in the same surroundings."""
        for olds, news in self._classes(beside(*self._sides())):
            if olds and news:
                yield Alike(tuple(olds), tuple(news))

    def _pair_outward(self) -> None:
        """Pair what is told by what is paired beside it, as far as that leads."""
        while self._pair_equals(beside(*self._sides())) or self._pair_by_values():
            pass

    def _pair_by_name(self, demand: Callable[[Part, Part], bool]) -> None:
        """Pair what kept its name, though much else is different, if it is as demanded."""
        for name in self._sides()[0].left():
            now = self.new.parts.get(name)
            if now is not None and name not in self.taken and demand(self.old.parts[name], now):
                self._pair(name, name)

    def _sides(self) -> tuple[Side, Side]:
        return Side(self.old, self.pairs), Side(self.new, self.taken)

    def _may_have_wandered(self) -> bool:
        """Whether a part that is left can be one of another name."""
        earlier, later = (side.left() for side in self._sides())
        return bool(earlier and later) and (len(earlier) > 1 or earlier != later)

    def _pair(self, old: str, new: str) -> None:
        self.pairs[old] = self.taken[new] = new

    def _is_as_it_was(self, name: str) -> bool:
        """Whether a part of that name is there again with the same values and the same pipes."""
        if name not in self.new.parts or not _is_near(self.old.parts[name], self.new.parts[name], 0):
            return False
        before, after = (sorted((one.port, *one.far) for one in side.pipes[name]) for side in (self.old, self.new))
        return before == after

    def _pair_equals(self, colours: Colours) -> bool:
        """Pair what has a colour alone, or is there again under its name; returns whether anything was."""
        done = len(self.pairs)
        for olds, news in self._classes(colours):
            kept = [name for name in olds if name in news]
            for name in kept:
                self._pair(name, name)
            self._pair_single([name for name in olds if name not in kept], [name for name in news if name not in kept])
        return len(self.pairs) > done

    def _pair_single(self, olds: Sequence[str], news: Sequence[str]) -> None:
        if len(olds) == len(news) == 1 and _is_near(self.old.parts[olds[0]], self.new.parts[news[0]], _NEARLY):
            self._pair(olds[0], news[0])

    def _pair_only_ones(self) -> None:
        """Pair what kept its name and is the only one of its kind that is left, whatever was done round it."""
        kinds = tuple({name: side.layout.parts[name].kind for name in side.left()} for side in self._sides())
        for olds, news in self._classes((kinds[0], kinds[1])):
            if len(olds) == 1 and olds == news:
                self._pair(olds[0], olds[0])

    def _classes(self, colours: Colours) -> list[tuple[list[str], list[str]]]:
        """Names of the earlier and of the later layout, by colour."""
        found: dict[Hashable, tuple[list[str], list[str]]] = defaultdict(lambda: ([], []))
        for side, coloured in enumerate(colours):
            for name, colour in coloured.items():
                found[colour][side].append(name)
        return list(found.values())

    def _pair_by_values(self) -> bool:
        """Pair what is told by its values and has kept a pipe, but for what has kept its name."""
        done = len(self.pairs)
        earlier, later = (side.left() for side in self._sides())
        old = {name: repr(self.old.parts[name]) for name in earlier if name not in self.new.parts}
        new = {name: repr(self.new.parts[name]) for name in later if name not in self.old.parts}
        for olds, news in self._classes((old, new)):
            if len(olds) == len(news) == 1 and self._is_told_by_values(olds[0], news[0]):
                self._pair(olds[0], news[0])
        return len(self.pairs) > done

    def _is_told_by_values(self, old: str, new: str) -> bool:
        if len(self.old.parts[old].model_fields_set) < _TELLING:
            return False
        kept = {(one.port, self.pairs.get(one.far.part), one.far.port) for one in self.old.pipes[old]}
        return any((one.port, one.far.part, one.far.port) in kept for one in self.new.pipes[new])


def _is_near(was: Part, now: Part, most: int) -> bool:
    """Whether two parts are of one kind and at most so many of their values differ."""
    if was.kind != now.kind:
        return False
    return was == now or sum(1 for _ in field_changes(was, now, "metric")) <= most
