"""A zone to what it has to take up: its heated water piece by piece, its growth, its tanks, where its water leaves."""

import math
from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis.equilibrium.coupled_zones import is_held
from plumbnet.analysis.equilibrium.heating_range import grows_m3
from plumbnet.analysis.equilibrium.wall_compliance import StandingWater, standing_water
from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume, Piece
from plumbnet.network.outlets import Opening
from plumbnet.network.piping import Zone
from plumbnet.physics.equilibrium import ZoneLoad
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import Shell, Tank, joined_shells


@dataclass(frozen=True)
class ZoneLoads:
    """Answers for the zones of a network, each by itself; what is looked up is gathered once for all of them."""

    network: Network
    _shells: dict[frozenset[Zone], tuple[Shell, Shell]] = field(default_factory=dict)
    _heaters: dict[frozenset[Zone], tuple[HeatedVolume, ...]] = field(default_factory=dict)
    _growth_of: dict[tuple[str, float], float] = field(default_factory=dict)

    @cached_property
    def water(self) -> StandingWater:
        """All water of the system, and its walls."""
        return standing_water(self.network)

    def waters(self, zones: Collection[Zone]) -> Iterator[tuple[HeatedVolume, Piece]]:
        """Heated water in zones piece by piece, each with the heat source that warms it most."""
        for zone in sorted(zones):
            yield from self._warmed_in.get(zone, ())

    def shells(self, zones: frozenset[Zone]) -> tuple[Shell, Shell]:
        """The heated water of zones and what stands beside it, each with its walls as one; gathered once."""
        if zones not in self._shells:
            warm = {
                piece.name: self.water.pieces[piece.name].shell
                for one in self.heaters(zones)
                for piece in one.pieces
                if self.network.zoning.zone_of[piece.node] in zones
            }
            cold = (shell for member in sorted(zones) for shell in self.water.beside(warm, member))
            self._shells[zones] = joined_shells(warm.values()), joined_shells(cold)
        return self._shells[zones]

    def heaters(self, zones: frozenset[Zone]) -> tuple[HeatedVolume, ...]:
        """Heat sources that warm water in zones, each once; gathered once."""
        if zones not in self._heaters:
            near = (one for member in sorted(zones) for one in self.network.heated_in.get(member, ()))
            self._heaters[zones] = tuple({one.name: one for one in near}.values())
        return self._heaters[zones]

    def tanks(self, zones: Collection[Zone]) -> Iterator[tuple[str, Tank]]:
        """Sound tanks in zones, by name."""
        for zone in sorted(zones):
            for name in self.tanks_in.get(zone, ()):
                yield name, self._tank(name, zone)

    def opened(self, zone: Zone, pressure_pa: float) -> Iterator[Role]:
        """Roles of the outlets of a zone that have opened at a pressure; tanks apart."""
        for opening in self._letting_out.get(zone, ()):
            if opening.opens_pa > pressure_pa:
                return
            yield opening.site.outlet.role

    @cached_property
    def _letting_out(self) -> dict[Zone, list[Opening]]:
        """Outlets of every zone that are no tanks, the lowest first."""
        openings = self.network.openings.items()
        return {zone: [one for one in own if one.site.outlet.role is not Role.TANK] for zone, own in openings}

    def load(self, zone: Zone, lift_pa: float = 0.0) -> ZoneLoad:
        """What a zone has to take up and what can take it, all pressures lifted by so much."""
        letting_out = self._letting_out.get(zone)
        return ZoneLoad(
            self._expansions.get(zone, {}),
            self.network.start_pa(zone) + ATMOSPHERE_PA + lift_pa,
            tuple(self._tank(name, zone, lift_pa) for name in self.takers_in(zone)),
            (letting_out[0].opens_pa if letting_out else math.inf) + ATMOSPHERE_PA + lift_pa,
        )

    def takers_in(self, zone: Zone) -> Sequence[str]:
        """Sound tanks of a zone, in the order in which its load has them; none where it is held and never rises."""
        return () if is_held(self.network, zone) else self.tanks_in.get(zone, ())

    @cached_property
    def tanks_in(self) -> dict[Zone, list[str]]:
        """Sound tanks of every zone, by name."""
        found: dict[Zone, list[str]] = defaultdict(list)
        for zone, sites in self.network.zoning.sites.items():
            for name in sorted(site.part for site in sites if site.outlet.role is Role.TANK):
                found[zone].append(name)
        return found

    def _tank(self, name: str, zone: Zone, lift_pa: float = 0.0) -> Tank:
        cushion = self.network.piping.system.parts[name].cushion()
        if cushion is None:
            raise TypeError(f"{name} is an outlet of the role tank, but no tank")
        return Tank(
            cushion.volume_m3,
            cushion.precharge_pa + ATMOSPHERE_PA,
            self.network.start_pa(zone) + ATMOSPHERE_PA + lift_pa,
            cushion.acceptance_m3,
            self.network.piping.heads_pa[next(self.network.piping.nodes_of(name))] + lift_pa,
        )

    @cached_property
    def _expansions(self) -> dict[Zone, dict[str, float]]:
        """Growth in each zone by heater."""
        growths: dict[Zone, dict[str, float]] = defaultdict(lambda: defaultdict(float))
        for heated, piece in self._warmed.values():
            zone = self.network.zoning.zone_of[piece.node]
            growths[zone][heated.name] += self._grown_m3(heated, piece)
        return growths

    def _grown_m3(self, heated: HeatedVolume, piece: Piece) -> float:
        """Growth of a piece; how the water of a heater grows up to a temperature is asked once."""
        hot_k = heated.hot_k(piece)
        if (heated.name, hot_k) not in self._growth_of:
            self._growth_of[heated.name, hot_k] = grows_m3(self.network, heated, 1.0, hot_k)
        return piece.volume_m3 * self._growth_of[heated.name, hot_k]

    def heaters_in(self, zone: Zone) -> Iterator[str]:
        """Heaters that warm water in a zone with every fixture shut."""
        yield from (heated.name for heated in self.network.heated_in.get(zone, ()))

    def growth_by(self, heaters: Collection[str]) -> Mapping[Zone, float]:
        """Growth in each zone of all water that some heaters warm, whatever else warms it too."""
        numbers = sorted(self._number_of[name] for name in heaters if name in self._number_of)
        warming = (heated for number in numbers if not (heated := self.network.heated[number]).is_idle)
        found: dict[Zone, float] = defaultdict(float)
        for name in dict.fromkeys(piece.name for heated in warming for piece in heated.pieces):
            zone, growth_m3 = self._growths[name]
            found[zone] += growth_m3
        return found

    @cached_property
    def _number_of(self) -> dict[str, int]:
        """Which of the heat sources each is, in the order of the file."""
        return {heated.name: number for number, heated in enumerate(self.network.heated)}

    @cached_property
    def _growths(self) -> dict[str, tuple[Zone, float]]:
        """Zone and growth of each piece of heated water, by its name."""
        return {
            name: (self.network.zoning.zone_of[piece.node], self._grown_m3(heated, piece))
            for name, (heated, piece) in self._warmed.items()
        }

    @cached_property
    def _warmed_in(self) -> dict[Zone, list[tuple[HeatedVolume, Piece]]]:
        """The same, by the zone in which it stands."""
        found: dict[Zone, list[tuple[HeatedVolume, Piece]]] = defaultdict(list)
        for heated, piece in self._warmed.values():
            found[self.network.zoning.zone_of[piece.node]].append((heated, piece))
        return found

    @cached_property
    def _warmed(self) -> dict[str, tuple[HeatedVolume, Piece]]:
        """Heated water by name; what several warm counts once, for the one that warms it most."""
        warmest: dict[str, tuple[float, HeatedVolume, Piece]] = {}
        for heated in self.network.heated:
            for piece in () if heated.is_idle else heated.pieces:
                growth_m3 = self._grown_m3(heated, piece)
                if piece.name not in warmest or growth_m3 > warmest[piece.name][0]:
                    warmest[piece.name] = (growth_m3, heated, piece)
        return {name: (heated, piece) for name, (_, heated, piece) in warmest.items()}
