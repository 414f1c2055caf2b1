"""What changes in a district do to the facts of the whole, from an analysis of the district alone."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Protocol, TypeVar

from plumbnet.analysis import Report, facts_of
from plumbnet.layout.edits import with_changes
from plumbnet.layout.model import Change, Circuit, System
from plumbnet.network import Network
from plumbnet.network.piping import Zone
from plumbnet.network.pressure import Feed, PressureSources
from plumbnet.rules.facts import (
    Facts,
    HeaterFacts,
    LowFacts,
    ReducerFacts,
    ReliefFacts,
    ReturnFacts,
    TankFacts,
    TapFacts,
)
from plumbnet.study.contingency.boundary import ROOT, Boundaries
from plumbnet.study.contingency.district import District
from plumbnet.study.contingency.verdict_only import NotTold, Withheld, hasty_network_of


class _Named(Protocol):
    @property
    def name(self) -> str:
        """Name of the part."""


Item = TypeVar("Item", bound=_Named)


@dataclass(frozen=True, slots=True)
class Effect:
    """The facts inside a district after changes that are not felt beyond it.

    `is_settled` says that heated water inside comes to the boundary's zone just as it did before. `returns` tells of
    growth inside that goes back to the main, `reducing` what facts on reducers rest on.
    """

    district: District
    heaters: tuple[HeaterFacts, ...]
    tanks: tuple[TankFacts, ...]
    reliefs: tuple[ReliefFacts, ...]
    expansion_reliefs: tuple[ReliefFacts, ...]
    is_settled: bool
    returns: tuple[ReturnFacts, ...]
    reducing: "ReducerEffect"
    lows: tuple[LowFacts, ...]
    taps: tuple[TapFacts, ...]


@dataclass(frozen=True, slots=True)
class ReducerEffect:
    """What facts on reducers rest on, inside a district.

    Of each reducer inside what is known of it there, whether water from the boundary comes to its outlet, and whether
    water behind it comes to the boundary; of the tanks and expansion relief valves that water from the boundary comes
    to, what opens them; and the heaters that fire with every fixture shut whose water comes to the boundary.
    """

    inside: tuple[tuple[ReducerFacts, bool, bool], ...]
    offered: frozenset[tuple[str, float]]
    pushing: frozenset[str]


@dataclass(frozen=True)
class Effects:
    """Effects of changes to the layout of a report, and the facts of the whole that come of them."""

    report: Report
    _feeds: dict[Zone, Feed | None] = field(default_factory=dict)

    def of(self, district: District, changes: Iterable[Change]) -> Effect | None:
        """The effect of changes inside a district; None where they are felt beyond.

        Raises Unanswerable, ChangeError.
        """
        network = hasty_network_of(with_changes(district.system, changes))
        inner = Boundaries(network)
        zone = network.zoning.zone_of[next(network.piping.nodes_of(district.boundary.tee))]
        if not _is_kept(district, inner, zone):
            return None
        own = facts_of(network, self.report.rules, units=self.report.facts.units)
        return Effect(
            district=district,
            heaters=own.heaters,
            tanks=tuple(_reached(district, network, zone, own.tanks)),
            reliefs=own.reliefs,
            expansion_reliefs=own.expansion_reliefs,
            is_settled=bool(inner.heaters_reaching(zone)) == district.is_heated_inside,
            returns=own.returns,
            reducing=_reducing(inner, zone, own.reducers),
            lows=tuple(self._fed_from_beyond(district, own.lows)),
            taps=own.taps,
        )

    def facts(self, effects: Sequence[Effect], at_rest: Sequence[Effect], whole: System) -> Facts:
        """The facts of the whole with the effects in districts that have no part in common, save tees.

        `at_rest` are the same districts with nothing having happened, `whole` is the layout with all changes made. What
        can be told only from the whole is withheld, unless nothing that it rests on has changed.
        """
        base, inside = self.report.facts, frozenset().union(*(one.district.names for one in effects))
        pairs = list(zip(effects, at_rest, strict=True))
        keeps_returns = all(one.returns == rest.returns for one, rest in pairs)
        keeps_reducers = all(one.is_settled and one.reducing == rest.reducing for one, rest in pairs)
        leads_on = all(_leads_alike(self.report.system, whole, name) for name in inside)
        return Facts(
            system=whole,
            units=base.units,
            heaters=tuple(_merged(base.heaters, (one.heaters for one in effects), inside)),
            tanks=tuple(map(_sideless, _merged(base.tanks, (one.tanks for one in effects), inside))),
            reliefs=tuple(_merged(base.reliefs, (one.reliefs for one in effects), inside)),
            expansion_reliefs=tuple(
                _merged(base.expansion_reliefs, (one.expansion_reliefs for one in effects), inside)
            ),
            reducers=base.reducers if keeps_reducers or not base.reducers else Withheld(),
            returns=base.returns if keeps_returns else Withheld(),
            hot_side_checks=Withheld(),
            idle_pumps=Withheld(),
            unreached=Withheld(),
            pumped=Withheld(),
            hindered_pumps=Withheld(),
            lows=tuple(_merged(base.lows, (one.lows for one in effects), inside)),
            taps=tuple(_merged(base.taps, (one.taps for one in effects), inside)),
            circulators=Withheld(),
            stores=Withheld(),
            tank_service=Withheld(),
            outlets=Withheld(),
            shut_in=Withheld(),
            feeds=base.feeds if leads_on else Withheld(),
            fills=base.fills if leads_on or not _carries_heat(whole) else Withheld(),
            assumed=base.assumed,
            circuit_of=_untold,
        )

    def _fed_from_beyond(self, district: District, lows: Iterable[LowFacts]) -> Iterator[LowFacts]:
        """Places inside, those whose pressure comes from beyond with what gives it to the boundary there."""
        zone = district.boundary.zone
        for low in lows:
            if low.feed is None or low.feed.name != ROOT:
                yield low
                continue
            if zone not in self._feeds:
                network = self.report.network
                self._feeds[zone] = PressureSources(network.zoning, network.standing).feed(zone)
            feed = self._feeds[zone]
            room_pa = low.feed.room_pa
            yield replace(low, feed=None if feed is None else replace(feed, room_pa=min(feed.room_pa, room_pa)))


def _leads_alike(before: System, after: System, name: str) -> bool:
    """Whether water finds the same ways through a part as before, and is heated there if it was before."""
    was, now = before.parts[name], after.parts[name]
    return list(was.passages()) == list(now.passages()) and (was.heat() is None) == (now.heat() is None)


def _carries_heat(system: System) -> bool:
    """Whether there may be heating circuits; without them nothing is filled from drinking water."""
    return any(part.carries_heat_at() for part in system.parts.values())


def _untold(_part: str) -> Circuit:
    """To which circuit a part belongs is told by the whole layout."""
    raise NotTold


def _is_kept(district: District, inner: Boundaries, zone: Zone) -> bool:
    """Whether nothing of what happened inside is felt beyond the boundary, whose zone inside is given."""
    standing, beyond = inner.network.standing, district.boundary.beyond
    if standing.levels_pa(zone) != (beyond.pressure_pa, beyond.cut_in_pa, beyond.usual_pa, beyond.least_pa):
        return False
    if standing.cold_k[zone] != beyond.temperature_k or inner.is_felt_across(zone):
        return False
    is_heated = bool(inner.heaters_reaching(zone))
    if not beyond.takes_back:
        return not is_heated
    return district.is_heated_beyond or is_heated == district.is_heated_inside


class _Sideless(TankFacts):
    """A tank of which it was not looked for whether it hangs on the hot side, which is told by the whole layout."""

    __slots__ = ()

    def __getattribute__(self, name: str) -> object:
        if name == "on_hot_side":
            raise NotTold
        return super().__getattribute__(name)


def _sideless(tank: TankFacts) -> TankFacts:
    return _Sideless(**{each.name: getattr(tank, each.name) for each in fields(TankFacts)})


def _reducing(inner: Boundaries, zone: Zone, own: Sequence[ReducerFacts]) -> ReducerEffect:
    """What facts on reducers rest on inside a district whose boundary stands in a zone."""
    network, zone_of = inner.network, inner.network.zoning.zone_of
    from_boundary = frozenset(network.reach((zone,), math.inf))
    outlets = {gate.part: zone_of[gate.end] for gate in network.piping.gates}
    inside = (
        (one, outlets[one.name] in from_boundary, zone in network.reach((outlets[one.name],), math.inf)) for one in own
    )
    sites = (site for each in sorted(from_boundary) for site in network.zoning.sites.get(each, ()))
    idle = {heated.name for heated in network.heated if heated.is_idle}
    return ReducerEffect(
        tuple(inside),
        frozenset((site.part, site.opens_pa) for site in sites if site.outlet.role.is_control),
        frozenset(inner.heaters_reaching(zone)) - idle,
    )


def _merged(base: Sequence[Item], own: Iterable[Sequence[Item]], inside: frozenset[str]) -> Iterator[Item]:
    """What lies beyond as it was, and what lies inside as it is now, in its old place."""
    now = {one.name: one for each in own for one in each}
    for one in base:
        if one.name not in inside:
            yield one
        elif one.name in now:
            yield now.pop(one.name)
    yield from now.values()


def _reached(district: District, network: Network, zone: Zone, tanks: Iterable[TankFacts]) -> Iterator[TankFacts]:
    """The tanks inside, some of them reached by water that is heated beyond."""
    from_beyond = frozenset(network.reach((zone,), math.inf)) if district.is_heated_beyond else frozenset[Zone]()
    for tank in tanks:
        stands_in = network.zoning.zone_of[next(network.piping.nodes_of(tank.name))]
        yield replace(tank, reached=True, stopped_by=()) if stands_in in from_beyond else tank
