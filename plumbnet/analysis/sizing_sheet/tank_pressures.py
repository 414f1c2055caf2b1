"""The pressures at a tank's place, from what the author wrote to the absolute ones that a sizing method takes."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

from plumbnet.analysis.sizing_sheet.provenance import Provenance
from plumbnet.analysis.sizing_sheet.sheet_model import Section, SheetItem
from plumbnet.analysis.verdict import Case
from plumbnet.layout.model import End
from plumbnet.network.piping import Node
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.sizing import METHODS, Step, step
from plumbnet.rules import Profile, listed

_Line: TypeAlias = SheetItem | Step

AIR = SheetItem("p_atm", "pressure of the air", ATMOSPHERE_PA, "pressure", "standard atmosphere, ISO 2533")
HEIGHTS = "gauge to absolute, at the tank's height"

_TANK = "the tank"
_SAME_PA = 0.5
"""Pressures this close are the same but for the conversion of units."""


class _Target(NamedTuple):
    """An absolute pressure at the tank: its symbol, its name, and its value as a gauge there reads it."""

    symbol: str
    name: str
    gauge_pa: float


@dataclass(frozen=True)
class TankPressures:
    """Items and steps for one heater's tank: the static pressure there, the limit, and what else a method asks for."""

    case: Case
    profile: Profile
    origins: Provenance

    def section(self, method: str) -> Section:
        """Everything the method needs, and the limit whether it needs it or not."""
        lines = [AIR, *self._static(), *self._limit()]
        needs = METHODS[method].needs
        if "relief_abs_pa" in needs:
            lines += self._relief()
        if "head_pa" in needs:
            lines.append(self._head())
        return pressure_section("Pressures where the tank connects", lines)

    def _static(self) -> Iterator[_Line]:
        item, node = next(self._sources(), None) or self._computed()
        yield item
        yield from self._at_tank(item, node, _Target("p_static", "static pressure", self.case.tank.task.static_pa))

    def _sources(self) -> Iterator[tuple[SheetItem, Node]]:
        """The reducer or the supply whose pressure stands in the zone, with its node."""
        piping, static_pa = self.case.network.piping, self.case.network.standing.at(self.case.zone)
        for gate in piping.gates:
            if gate.forward is not None and abs(gate.forward.below_pa - static_pa) < _SAME_PA:
                own_pa = gate.forward.below_pa - piping.heads_pa[gate.end]
                yield _gauge("d_set", f"set of {gate.part}", own_pa, self.origins.field(gate.part, "set")), gate.end
        for name, part in piping.system.parts.items():
            source, node = part.source(), next(piping.nodes_of(name), None)
            if source is None or node is None:
                continue
            if abs(source.pressure_pa + piping.heads_pa[node] - static_pa) < _SAME_PA:
                at_highest = source.usual_pa is not None and source.usual_pa < source.pressure_pa
                words = f"pressure of {name}" if source.pressure_pa else f"open surface of {name}"
                origin = self.origins.field(name, "highest" if at_highest else "pressure", "cut_out", "elevation")
                words = f"highest {words}" if at_highest else words
                yield _gauge("d_supply", words, source.pressure_pa, origin), node

    def _computed(self) -> tuple[SheetItem, Node]:
        """The static pressure where no single part gives it."""
        origin = "computed: widest path from the supplies, less what each device takes"
        if self.case.network.standing.static_pa[self.case.zone] is None:
            origin = "computed: no supply reaches it; taken as just full"
        item = _gauge("d_static", "static pressure at the tank", self.case.tank.task.static_pa, origin)
        return item, self.case.tank.task.place.node

    def _limit(self) -> Iterator[_Line]:
        limit, piping = self.case.limit, self.case.network.piping
        through = f", reached through {listed(limit.way)}" if limit.way else ""
        target = _Target("p_limit", f"limit ({limit.by}{through})", self.case.tank.task.limit_pa)
        if limit.basis == "relief":
            yield from self._limit_below_relief(limit.part, target)
            return
        ruling = self.profile.distribution_limit
        node = next(piping.nodes_of(limit.part)) if limit.part else self.case.node
        item = _gauge("d_limit", "highest pressure where water is drawn", ruling.value_pa, self._ruled(ruling.clause))
        if limit.basis == "rating":
            origin = self.origins.field(limit.part, "rating")
            item = _gauge("d_limit", f"rating of {limit.part}", limit.own_pa or 0.0, origin)
        if limit.basis == "set":
            origin = self.origins.field(limit.part, "pressure")
            item = _gauge("d_limit", f"set of {limit.part}", limit.own_pa or 0.0, origin)
        yield item
        yield from self._at_tank(item, node, target)

    def _limit_below_relief(self, part: str, target: _Target) -> Iterator[_Line]:
        piping, share = self.case.network.piping, self.profile.relief_share
        port, set_pa = next(piping.system.parts[part].safety_sets())
        yield _gauge("d_relief", f"set of {part}", set_pa, self.origins.field(part, "pressure"))
        margin, own_pa = self.profile.relief_margin, self.profile.highest_below_relief_pa(set_pa)
        name = f"limit at {part}"
        if margin is not None and own_pa < share.value * set_pa:
            given = _gauge("d_clear", "margin below the set", margin.value_pa, self._ruled(margin.clause))
            numbers, formula = {"d_relief": set_pa, "d_clear": margin.value_pa}, "max(0, d_relief - d_clear)"
        else:
            given = SheetItem(
                "e_limit", "share of the set to come up to", share.value, "ratio", self._ruled(share.clause)
            )
            numbers, formula = {"e_limit": share.value, "d_relief": set_pa}, "e_limit * d_relief"
        yield given
        own = step("d_limit", name, formula, own_pa, "the rule profile", **numbers)
        yield own
        yield from self._at_tank(own, piping.node_of[End(part, port)], target)

    def _relief(self) -> Iterator[_Line]:
        relief_pa = self.case.tank.task.relief_pa
        if relief_pa is None:
            return
        zoning = self.case.network.zoning
        sites = zoning.sites[zoning.zone_of[self.case.tank.task.place.node]]
        lowest = min((s for s in sites if s.outlet.is_safety), key=lambda site: site.opens_pa)
        origin = self.origins.field(lowest.part, "pressure")
        item = _gauge("d_sv", f"set of {lowest.part}", lowest.outlet.opens_pa, origin)
        yield item
        yield from self._at_tank(item, lowest.node, _Target("p_sv", "set of the relief valve", relief_pa))

    def _head(self) -> SheetItem:
        piping, zone_of = self.case.network.piping, self.case.network.zoning.zone_of
        nodes = (node for node, zone in enumerate(zone_of) if zone == self.case.zone)
        top = piping.ports[max(nodes, key=piping.heads_pa.__getitem__)].part
        head_pa = self.case.tank.task.head_pa
        return _gauge("d_head", "column of water above the tank", head_pa, self.origins.column(top, _TANK, head_pa))

    def _at_tank(self, given: _Line, node: Node, target: _Target) -> Iterator[_Line]:
        """From a gauge pressure at a node to the absolute one at the tank."""
        piping, own = self.case.network.piping, piping_height(self.case)
        fall_pa = piping.heads_pa[node] - own
        numbers = {"p_atm": ATMOSPHERE_PA, given.symbol: given.value}
        kind = target.symbol.removeprefix("p_")
        if abs(fall_pa) >= _SAME_PA:
            part, symbol = piping.ports[node].part, f"d_{kind}_column"
            upper, lower = (part, _TANK) if fall_pa > 0.0 else (_TANK, part)
            name = f"column of water between {part} and the tank"
            yield _gauge(symbol, name, fall_pa, self.origins.column(upper, lower, fall_pa))
            numbers[symbol] = fall_pa
        left_pa = target.gauge_pa - given.value - fall_pa
        if abs(left_pa) >= _SAME_PA:
            symbol, way = f"d_{kind}_way", listed(self.case.limit.way or ("the way there",))
            yield _gauge(symbol, f"what {way} needs to open or holds back", left_pa, "the layout: one-way devices")
            numbers[symbol] = left_pa
        value_pa = target.gauge_pa + ATMOSPHERE_PA
        yield step(target.symbol, target.name, " + ".join(numbers), value_pa, HEIGHTS, **numbers)

    def _ruled(self, clause: str) -> str:
        return f"profile {self.profile.profile}: {clause}"


def piping_height(case: Case) -> float:
    """Static head of the height at which a heater's tank connects."""
    return case.network.piping.heads_pa[case.tank.task.place.node]


def pressure_section(title: str, lines: Iterable[_Line]) -> Section:
    """Items and steps, each in their order."""
    lines = list(lines)
    items = tuple(line for line in lines if isinstance(line, SheetItem))
    return Section(title, items, tuple(line for line in lines if isinstance(line, Step)))


def _gauge(symbol: str, name: str, value_pa: float, origin: str) -> SheetItem:
    return SheetItem(symbol, name, value_pa, "pressure difference", origin)
