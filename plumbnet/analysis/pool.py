"""What expands together and what takes it up: the heated water of a zone and the tanks it can push into."""

from dataclasses import dataclass
from functools import cached_property

from plumbnet.layout.kinds.supplies import COLD_SUPPLY_K
from plumbnet.layout.part import Cushion
from plumbnet.network.heated import Heated
from plumbnet.network.piping import Site
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.physics.expansion import expansion_m3
from plumbnet.physics.tank import Tank, settled_abs_pa
from plumbnet.physics.water import ATMOSPHERE_PA


@dataclass(frozen=True)
class Pool:
    """The zones that water of one zone can push into below its limit, with their heaters and tanks.

    Pressures are gauge, at datum.
    """

    network: Network
    zones: frozenset[Zone]
    limit_pa: float

    @cached_property
    def heaters(self) -> tuple[Heated, ...]:
        """Heat sources that warm water of these zones while every fixture is shut."""
        found = {heated.name: heated for zone in sorted(self.zones) for heated in self.network.heated_in.get(zone, ())}
        return tuple(found.values())

    @cached_property
    def expansion_m3(self) -> float:
        """Growth of all heated water in these zones; water that two heaters share counts once, at the hotter."""
        grown: dict[str, float] = {}
        for heated in self.heaters:
            for piece in heated.pieces:
                if self.network.zoning.zone_of[piece.node] in self.zones:
                    growth_m3 = grows_m3(self.network, heated, piece.volume_m3)
                    grown[piece.name] = max(grown.get(piece.name, 0.0), growth_m3)
        return sum(grown.values())

    @cached_property
    def tanks(self) -> dict[str, Tank]:
        """Sound tanks within reach, by name."""
        return {
            site.part: _tank(self.network, site, zone, cushion)
            for zone in sorted(self.zones)
            for site in self.network.zoning.sites.get(zone, ())
            if (cushion := self.network.piping.system.parts[site.part].cushion()) is not None
        }

    def taken_m3(self, pressure_pa: float) -> float:
        """Water the tanks have taken up once the zones stand at a pressure."""
        return sum(tank.uptake_m3(pressure_pa + ATMOSPHERE_PA) for tank in self.tanks.values())

    def settled_pa(self) -> float | None:
        """Pressure at which the tanks have taken up all expansion; None where they never can."""
        settled = settled_abs_pa(self.expansion_m3, tuple(self.tanks.values()))
        return None if settled is None else settled - ATMOSPHERE_PA

    @cached_property
    def short_m3(self) -> float:
        """What the tanks cannot take at the limit."""
        return max(0.0, self.expansion_m3 - self.taken_m3(self.limit_pa))


def grows_m3(network: Network, heated: Heated, volume_m3: float) -> float:
    """Growth of a volume that a heat source warms, from the coldest supply of its zone to its setpoint."""
    zone = network.zoning.zone_of[heated.inlet]
    pressure_abs_pa = start_pa(network, zone) - network.piping.heads_pa[heated.inlet] + ATMOSPHERE_PA
    return expansion_m3(volume_m3, cold_k(network, zone), heated.source.hot_k, pressure_abs_pa=pressure_abs_pa)


def cold_k(network: Network, zone: Zone) -> float:
    """Temperature at which a zone was filled; the usual one where no supply reaches it."""
    cold = network.standing.cold_k[zone]
    return COLD_SUPPLY_K if cold is None else cold


def start_pa(network: Network, zone: Zone) -> float:
    """Static pressure of a zone at datum; one that no supply reaches is taken as just full to its highest port."""
    static = network.standing.static_pa[zone]
    return network.tops_pa[zone] if static is None else static


def _tank(network: Network, site: Site, zone: Zone, cushion: Cushion) -> Tank:
    return Tank(
        cushion.volume_m3,
        cushion.precharge_pa + ATMOSPHERE_PA,
        start_pa(network, zone) + ATMOSPHERE_PA,
        cushion.acceptance_m3,
        network.piping.heads_pa[site.node],
    )
