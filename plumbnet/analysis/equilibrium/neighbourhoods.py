"""A network to the neighbourhood of each of its zones."""

from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis.equilibrium.coupled_zones import coupled_zones, gate_of, is_held
from plumbnet.analysis.equilibrium.neighbourhood import Neighbourhood
from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads
from plumbnet.budgets import TANK_SIZES, Budget
from plumbnet.network import Network
from plumbnet.network.piping import Zone
from plumbnet.physics.histories import Neighbours, Peaks


@dataclass
class Neighbourhoods:
    """The neighbourhood of each zone of a network, worked out once."""

    network: Network
    loading: ZoneLoads
    _of: dict[Zone, Neighbourhood] = field(default_factory=dict)

    def of(self, zone: Zone) -> Neighbourhood:
        """The neighbourhood of a zone. One that a way out holds open has none but its own: what it takes goes there."""
        if zone not in self._of:
            zones, crossings = coupled_zones(self.network, zone)
            lift_pa = max(0.0, -min(self.network.start_pa(each) for each in zones))
            loads = {each: self.loading.load(each, lift_pa) for each in sorted(zones, key=self._rank)}
            gates = [gate_of(self.network, crossing, lift_pa) for crossing in crossings]
            budget = Budget(TANK_SIZES, within=self.network.budget)
            found = Neighbourhood(Peaks(Neighbours(loads, gates, budget=budget)), lift_pa, self.loading)
            held = {each for each in zones if is_held(self.network, each)}
            self._of |= dict.fromkeys((zones - held) | {zone}, found)
        return self._of[zone]

    def around(self, zone: Zone) -> Neighbourhood | None:
        """A neighbourhood in which growth can push into a zone; None where none can, and it need not be looked for."""
        return self._pushed_into.get(zone)

    @cached_property
    def _pushed_into(self) -> dict[Zone, Neighbourhood]:
        found: dict[Zone, Neighbourhood] = {}
        for heated in sorted(self.network.heated_in):
            near = self.of(heated)
            for zone in near.reach(heated) if heated in near.growths_m3 else ():
                found.setdefault(zone, near)
        return found

    def _rank(self, zone: Zone) -> tuple[list[str], Zone]:
        """Sorts zones by the heaters in them, so that of equal histories the order of the file chooses none."""
        return sorted(one.name for one in self.network.heated_in.get(zone, ())), zone
