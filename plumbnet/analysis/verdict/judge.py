"""A network under rules to the answer for each heater: the worst case among the zones of its water."""

from dataclasses import dataclass
from functools import cached_property

from plumbnet.analysis.equilibrium import Limits, Neighbourhoods, SharedTanks
from plumbnet.analysis.observations import relieved_by
from plumbnet.analysis.required_tank import Gathered, TankPlaces
from plumbnet.analysis.verdict.case import Case
from plumbnet.analysis.verdict.heater_facts import heater_facts
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Node
from plumbnet.rules import Judging, Rules, ruled_by
from plumbnet.rules.facts import FROM_BEST_TO_WORST, ROUNDING_PA, HeaterFacts


@dataclass
class Judge:
    """Answers heater by heater for one network, each heater by the rules for the circuit that it warms."""

    network: Network
    rules: Rules
    limits: Limits
    settling: SharedTanks
    neighbourhoods: Neighbourhoods

    def heaters(self) -> tuple[HeaterFacts, ...]:
        """The answer for every heat source, in the order of the file."""
        return tuple(map(heater_facts, self.cases))

    @cached_property
    def cases(self) -> tuple[Case, ...]:
        """The worst case of every heat source, in the order of the file."""
        return tuple(self.case(heated) for heated in self.network.heated)

    def case(self, heated: HeatedVolume) -> Case:
        """The worst case among the zones in which the heater warms water, of two closed ones that of the lower limit.

        Of equal ones its own zone speaks first, then the first part by name.
        """
        zone_of = self.network.zoning.zone_of
        places = {zone_of[heated.inlet]: heated.inlet}
        beyond = {piece.node for piece in heated.pieces if zone_of[piece.node] not in places}
        for node in sorted(beyond, key=self.network.piping.ports.__getitem__):
            places.setdefault(zone_of[node], node)
        cases = [self._case(heated, node) for node in places.values()]
        worst = max((case.verdict for case in cases), key=FROM_BEST_TO_WORST.index)
        alike = [case for case in cases if case.verdict is worst]
        lowest_pa = min(case.limit.pressure_pa for case in alike)
        return next(case for case in alike if case.limit.pressure_pa <= lowest_pa + ROUNDING_PA)

    def _case(self, heated: HeatedVolume, node: Node) -> Case:
        relieving = self._relieving.get(heated.inlet, ())
        method = heated.source.sizing or self.rules.at(self.network.circuits, heated.inlet).sizing.value
        neighbourhood = self.neighbourhoods.of(self.network.zoning.zone_of[node])
        return Case(
            self.network, heated, node, self.limits, neighbourhood, self.settling, relieving, method, self._gathered
        )

    @cached_property
    def _gathered(self) -> Gathered:
        return Gathered(TankPlaces(self.network, self.rules))

    @cached_property
    def _relieving(self) -> dict[Node, tuple[str, ...]]:
        """Safety relief valves that only pipes and fittings join to each heater, by its inlet."""
        return relieved_by(self.network)


def judge_of(network: Network, judging: Judging) -> Judge:
    """The judge of a network under some rules; limits and what settles are searched anew."""
    settling, rules = SharedTanks(network), ruled_by(judging)
    return Judge(network, rules, Limits(network, rules), settling, Neighbourhoods(network, settling.loading))
