"""How the assemblies of a layout use each other: circles, depth, how many instances and parts they come to."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition
from plumbnet.layout.assemblies.told_once import ToldOnce, UseCount, Where

MOST_PARTS: Final = 100_000
"""Most parts of a layout, written out."""
MOST_LEVELS: Final = 8
"""Most assemblies that stand inside one another."""


@dataclass(slots=True)
class Survey:
    """Counts before anything is written out; `sound` says whether it can be.

    `innermost_first` has every assembly behind those that it uses.
    """

    layout: AssemblyBody
    assemblies: Mapping[str, AssemblyBody]
    told: ToldOnce
    sound: bool = True
    innermost_first: list[str] = field(default_factory=list)
    _parts: dict[str, int] = field(default_factory=dict)
    _levels: dict[str, int] = field(default_factory=dict)

    def look(self) -> None:
        """Tell of circles, of too much, and of assemblies of the layout that nothing uses."""
        for name in self.assemblies:
            self._walk(name, [])
        if not self.sound:
            return
        deepest = max(self._levels.values(), default=0)
        if deepest > MOST_LEVELS:
            name = next(name for name, levels in self._levels.items() if levels > MOST_LEVELS)
            self._refuse(name, f"assemblies stand inside one another more than {MOST_LEVELS} deep")
        self._count_uses()
        self._look_for_unused()
        total = self._sum(self.layout, self._parts)
        if total > MOST_PARTS:
            self.sound = False
            text = f"written out, the layout has {total:,} parts; the most is {MOST_PARTS:,}"
            self.told.tell_of("", self.layout.at.under("parts"), text, at_key=True)

    def pipes(self, of_body: Mapping[str, int]) -> int:
        """Pipes of the layout written out, from those that each body lays itself."""
        totals: dict[str, int] = {}
        for name in self.innermost_first:
            totals[name] = of_body[name] + self._inner(self.assemblies[name], totals)
        return of_body[""] + self._inner(self.layout, totals)

    def _refuse(self, name: str, text: str) -> None:
        self.sound = False
        self.told.tell_of("", self.assemblies[name].at, text, at_key=True)

    def _walk(self, name: str, above: list[str]) -> None:
        """Find what an assembly comes to, that of all it uses first; `above` use it."""
        if name in self._parts:
            return
        if name in above:
            circle = " -> ".join([*above[above.index(name) :], name])
            self._parts[name], self._levels[name] = 0, 0
            self._refuse(name, f"{name} is made of itself: {circle}")
            return
        above.append(name)
        body = self.assemblies[name]
        for definition in _instances(body):
            self._walk(definition.use or "", above)
        above.pop()
        if name not in self._parts:
            self._parts[name] = self._sum(body, self._parts)
            self._levels[name] = 1 + max((self._levels[one.use or ""] for one in _instances(body)), default=0)
            self.innermost_first.append(name)

    def _sum(self, body: AssemblyBody, of_assembly: Mapping[str, int]) -> int:
        return self._inner(body, of_assembly) + sum(
            len(one.all_labels) for one in body.parts.values() if one.use is None and not one.faulty
        )

    def _inner(self, body: AssemblyBody, of_assembly: Mapping[str, int]) -> int:
        return sum(len(one.all_labels) * of_assembly[one.use or ""] for one in _instances(body))

    def _count_uses(self) -> None:
        """How often each assembly is instanced, those that use it first."""
        for name in ["", *reversed(self.innermost_first)]:
            body = self.assemblies[name] if name else self.layout
            outer = self.told.uses.get(name)
            if name and outer is None:
                continue
            times, prefix = (1, "") if outer is None else (outer.count, outer.first.prefix)
            for one in _instances(body):
                count = times * len(one.all_labels)
                if one.use in self.told.uses:
                    self.told.uses[one.use].count += count
                else:
                    first = Where(one.use or "", prefix + one.named(one.all_labels[0]), one.at)
                    self.told.uses[one.use or ""] = UseCount(first, count)

    def _look_for_unused(self) -> None:
        for name, body in self.assemblies.items():
            if body.at.source == 0 and name not in self.told.uses and not self.told:
                text = f"nothing uses the assembly {name}; use it or take it out"
                self.told.tell_of("", body.at, text, at_key=True)


def _instances(body: AssemblyBody) -> Iterator[Definition]:
    """What a body declares that is of an assembly."""
    yield from (one for one in body.parts.values() if one.use is not None)
