"""Heated water, a place and a sizing method in, the tank that the water needs out."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from plumbnet.analysis.equilibrium import cold_k, heated_abs_pa
from plumbnet.analysis.required_tank.place import TankPlace
from plumbnet.layout.model import Mixture, System
from plumbnet.layout.units import customary
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume, Piece
from plumbnet.physics.fluids import ATMOSPHERE_PA, GLYCOL_SOURCE, OutsideWater, glycol_growth
from plumbnet.physics.sizing import Duty, MissingInput, OutsideMethod, Sizing, size_tank
from plumbnet.physics.vessels import NoTank, nominal_size_m3, nominal_sizes

ALWAYS = "membrane"
"""The method that has an answer wherever there is one, where that chosen has none."""


@dataclass(frozen=True, slots=True)
class WarmedWater:
    """Pieces of water that are warmed alike: from one temperature to another, under one pressure, with one mixture.

    `heaters` warm them, first those whose setpoint counts, then those that warm them less.
    """

    heaters: tuple[str, ...]
    pieces: tuple[Piece, ...]
    cold_k: float
    hot_k: float
    heated_abs_pa: float
    mixture: Mixture | None

    @property
    def volume_m3(self) -> float:
        """All of it, cold."""
        return math.fsum(piece.volume_m3 for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class Task:
    """Waters that share a tank and the place where it connects; pressures gauge at that place.

    `static_pa` stands there cold, `limit_pa` may not be passed, `relief_pa` is the lowest set of a safety relief
    valve of the zone (None: it has none), `head_pa` the column of water from the place to the zone's highest port.
    """

    place: TankPlace
    waters: tuple[WarmedWater, ...]
    static_pa: float
    limit_pa: float
    relief_pa: float | None
    head_pa: float

    def duty(self, water: WarmedWater, charge_abs_pa: float | None = None) -> Duty:
        """One water as the sizing methods take it.

        Raises GlycolMissing, OutsideGlycol (physics.glycol).
        """
        mixture = water.mixture
        plain = mixture is None
        return Duty(
            volume_m3=water.volume_m3,
            cold_k=water.cold_k,
            hot_k=water.hot_k,
            static_abs_pa=self.static_pa + ATMOSPHERE_PA,
            limit_abs_pa=self.limit_pa + ATMOSPHERE_PA,
            relief_abs_pa=None if self.relief_pa is None else self.relief_pa + ATMOSPHERE_PA,
            charge_abs_pa=charge_abs_pa,
            head_pa=self.head_pa,
            growth=None if mixture is None else glycol_growth(mixture.glycol, mixture.share, water.cold_k, water.hot_k),
            growth_source="given" if plain else GLYCOL_SOURCE,
            heated_abs_pa=water.heated_abs_pa,
        )


def tank_task(network: Network, place: TankPlace, limit_pa: float, waters: tuple[WarmedWater, ...]) -> Task:
    """The task of a tank at a place whose zone may come to a limit, gauge at datum, for the waters that come to it."""
    zone, head_pa = network.zoning.zone_of[place.node], network.piping.heads_pa[place.node]
    sets = [site.opens_pa for site in network.zoning.sites.get(zone, ()) if site.outlet.is_safety]
    return Task(
        place=place,
        waters=waters,
        static_pa=network.start_pa(zone) - head_pa,
        limit_pa=limit_pa - head_pa,
        relief_pa=min(sets) - head_pa if sets else None,
        head_pa=max(0.0, network.tops_pa[zone] - head_pa),
    )


def waters(network: Network, warmed: Iterable[tuple[HeatedVolume, Piece]]) -> tuple[WarmedWater, ...]:
    """Pieces and what warms them, gathered by how they are warmed, in the order given."""
    alike: dict[tuple[float, float, float, Mixture | None], list[tuple[HeatedVolume, Piece]]] = {}
    for heated, piece in warmed:
        zone = network.zoning.zone_of[heated.inlet]
        how = (cold_k(network, zone), heated.hot_k(piece), heated_abs_pa(network, heated), heated.source.mixture)
        alike.setdefault(how, []).append((heated, piece))
    return tuple(
        WarmedWater(tuple(_warmers(network, members)), tuple(piece for _, piece in members), *how)
        for how, members in alike.items()
    )


def _warmers(network: Network, members: Iterable[tuple[HeatedVolume, Piece]]) -> dict[str, None]:
    """Names of all heat sources that warm some of these pieces, those they are listed with first."""
    names = dict.fromkeys(heated.name for heated, _ in members)
    pieces = {piece.name for _, piece in members}
    zones = sorted({network.zoning.zone_of[piece.node] for _, piece in members})
    near = {one.name: one for zone in zones for one in network.heated_in.get(zone, ())}
    return names | {name: None for name, one in near.items() if any(piece.name in pieces for piece in one.pieces)}


def sized(task: Task, method: str) -> tuple[Sizing, ...]:
    """The tank for each water by a method; together they are the tank for all.

    Each is charged alike, to the highest charge that one of them asks for. Raises NoTank (physics.tank),
    MissingInput, OutsideMethod (physics.sizing), OutsideWater (physics.water), GlycolMissing, OutsideGlycol.
    """
    each = tuple(size_tank(method, task.duty(water)) for water in task.waters)
    charges = {one.charge_abs_pa for one in each if one.charge_abs_pa is not None}
    if len(charges) <= 1:
        return each
    return tuple(size_tank(method, task.duty(water, max(charges))) for water in task.waters)


def tank_answer(task: Task, method: str) -> tuple[Sizing, ...]:
    """The tank that a task asks for by a method; by Boyle's law where that has no answer; empty where none can do."""
    return next(_answers(task, method), ())


def _answers(task: Task, method: str) -> Iterator[tuple[Sizing, ...]]:
    for each in dict.fromkeys((method, ALWAYS)):
        try:
            yield sized(task, each)
        except NoTank:
            return
        except (MissingInput, OutsideMethod, OutsideWater):
            continue


def charge_pa(task: Task, found: tuple[Sizing, ...]) -> float:
    """The charge, gauge at the tank; that of the air for an open tank."""
    charge = found[0].charge_abs_pa
    if charge is None:
        return 0.0
    return task.static_pa if charge == task.static_pa + ATMOSPHERE_PA else charge - ATMOSPHERE_PA


def nominal_m3(tank_m3: float, system: System) -> float | None:
    """The next size up of those the author can buy, or of the table; None where none is so large."""
    return nominal_size_m3(tank_m3, system.tank_sizes_m3 or nominal_sizes(customary(system.units)))
