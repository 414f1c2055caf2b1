"""An outlet that heated water comes to: whether it takes some, from what pressure on, and what is wrong with it."""

from dataclasses import dataclass

from plumbnet.analysis.report import Report
from plumbnet.analysis.water_walk.walk_steps import Conduct, Refusing, Taking
from plumbnet.layout.model import End, Outlet, Part, Role
from plumbnet.network.outlets import MOST_RUNGS
from plumbnet.rules.facts import HeaterFacts, ReliefFacts, TankFacts


@dataclass(frozen=True, slots=True)
class OutletView:
    """Outlets as the water of one heater meets them; `head_pa` is the static head of the heater's height."""

    report: Report
    heater: HeaterFacts
    head_pa: float

    def met(self, end: End, outlet: Outlet) -> Taking | Refusing:
        """What the outlet at a port does: those on the heater's ladder take water, and those it had no room for."""
        rung = next((rung for rung in self.heater.ladder if rung.outlet == end.part), None)
        first = self.heater.way_out
        if rung is None and first is not None:
            return Refusing(first.outlet)
        if rung is None and len(self.heater.ladder) < MOST_RUNGS:
            return Refusing(None)
        opens_pa = self._own_pa(end, outlet) if rung is None else rung.opens_pa
        return Taking(
            role=outlet.role,
            opens_pa=opens_pa,
            is_past_limit=opens_pa > self.heater.bound_pa,
            running=self._running(end.part),
            wrong_charge=self._wrong_charge(end.part),
        )

    def _own_pa(self, end: End, outlet: Outlet) -> float:
        """Pressure, gauge at the heater, at which an outlet takes water that the ladder had no room for."""
        network = self.report.network
        node = network.piping.node_of[end]
        opens_pa = outlet.opens_pa + network.piping.heads_pa[node]
        if outlet.role is Role.TANK:
            opens_pa = max(opens_pa, network.standing.at(network.zoning.zone_of[node]))
        return opens_pa - self.head_pa

    def _running(self, name: str) -> ReliefFacts | None:
        """The relief valve of a name, where its supply stands above its set."""
        facts = self.report.facts
        return next((one for one in (*facts.reliefs, *facts.expansion_reliefs) if one.name == name and one.runs), None)

    def _wrong_charge(self, name: str) -> TankFacts | None:
        """The tank of a name, where it is charged wrong by more than the rules allow."""
        tolerance_pa = self.report.profile_of(name).charge_tolerance.value_pa
        tank = next((one for one in self.report.facts.tanks if one.name == name), None)
        return tank if tank is not None and tank.is_charged_wrong(tolerance_pa) else None


def lost(part: Part) -> Conduct | None:
    """What became of a tank or a relief valve that takes nothing any more; None of every other part."""
    cushion = part.cushion()
    if cushion is not None and not cushion.is_sound:
        return Conduct.IS_FULL
    is_plugged = any(True for _ in part.safety_sets()) and not any(True for _ in part.outlets())
    return Conduct.IS_PLUGGED if is_plugged else None
