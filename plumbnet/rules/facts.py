"""What an analysis knows of heaters, tanks and relief valves: frozen data that findings and reports are written on.

One module, because whoever writes a finding reads all of it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Literal, TypeAlias

from plumbnet.layout.model import End, Role, System
from plumbnet.layout.units import LENGTH, POWER, PRESSURE, TEMPERATURE, VOLUME, Units, show
from plumbnet.network.outlets import Closings, Stops
from plumbnet.network.pressure import Feed
from plumbnet.physics.vessels import Bracket

ROUNDING_PA = 1.0
"""Pressures are compared to one pascal, finer than any gauge and coarser than the rounding of unit conversion."""


class Verdict(StrEnum):
    """What becomes of a heater's expansion. The words are a promise."""

    OPEN = "open"
    """A way to the main or to open air opens at or below the limit, or the static pressure where that is higher."""
    CONTROLLED = "controlled"
    """Closed, and the control fitted keeps the pressure at or below the limit at full temperature."""
    TRAPPED = "trapped"
    """Closed, and the pressure passes the limit; the safety relief valve is all that stands behind it."""
    SEALED = "sealed"
    """Trapped, and not even a relief valve can be reached."""
    ON_DEMAND = "on-demand"
    """Closed, but the heater fires only while water is drawn and sits in no driven loop."""


FROM_BEST_TO_WORST = (Verdict.OPEN, Verdict.ON_DEMAND, Verdict.CONTROLLED, Verdict.TRAPPED, Verdict.SEALED)
"""Verdicts in order, the last being that of the greatest danger."""
TROUBLED = frozenset({Verdict.TRAPPED, Verdict.SEALED})
"""Verdicts under which a heater's expansion is not held."""


Basis: TypeAlias = Literal["fixture", "rating", "relief", "profile"]
"""What a limit rests on: people drawing water, a part's rating, a relief valve's set, the profile alone."""


@dataclass(frozen=True, slots=True)
class Limit:
    """The highest pressure a zone may reach, gauge at datum, and what sets it; `own_pa` as it reads there.

    `part` is the fixture, the rated part or the relief valve that sets it; empty where nothing does. Where it stands
    beyond one-way devices, `way` are those that water passes on its way there.
    """

    pressure_pa: float
    by: str
    own_pa: float | None = None
    part: str = ""
    basis: Basis = "profile"
    way: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RungFacts:
    """An outlet and the pressure, gauge at the heater's height, at which the way to it opens; the way by part names."""

    outlet: str
    role: Role
    kind: str
    opens_pa: float
    way: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Charge:
    """A tank and what it ought to be charged to, gauge at the tank, beside what it is charged to."""

    tank: str
    right_pa: float
    wrong_pa: float


@dataclass(frozen=True, slots=True)
class Need:
    """The tank that would hold every place that the heaters it `serves` push into, beside the sound tanks at hand.

    Put into a copy of the layout at `at` (a part, or a pipe by its ends), charged to `precharge_pa` (gauge at the
    tank), one of `tank_m3` holds them in every history, and one hundredth less does not. None: no tank there can, as
    where the static pressure is at the limit. `nominal_m3` is the next size that the trade has, None where none is so
    large. `asked_m3` is what the sizing method `method` asks for where that is more.
    """

    tank_m3: float | None
    nominal_m3: float | None
    precharge_pa: float
    at: str
    serves: tuple[str, ...] = ()
    asked_m3: float | None = None
    method: str = ""
    beside: tuple[str, ...] = ()
    """Sound tanks that are counted on as they are."""
    recharge: tuple[Charge, ...] = ()
    """Tanks at hand that would do without another, charged right; empty where they would not."""
    is_tight: bool = True
    """Whether one hundredth less is known to fail; a bound that no history passes may be above what any comes to."""


@dataclass(frozen=True, slots=True)
class PlaceFacts:
    """A place that comes above its own limit; pressures gauge at its own height.

    `part` sets the limit `limit_pa`, `way` are the one-way devices past which growth comes there. No history brings it
    above `highest_pa`; `history` brings it to `reached_pa`, by the heaters that warm, stage by stage.
    """

    part: str
    by: str
    limit_pa: float
    highest_pa: float
    reached_pa: float
    way: tuple[str, ...]
    history: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class LockedFacts:
    """What comes of a trapped or sealed heater left as it is, between rigid walls and typical ones.

    `outlet` lifts first, at `opens_pa` gauge at the heater's height; None where nothing can lift, and the pressure
    is then the one to which a heater is tested. Until then the water warms by `rise_k`, which takes `firing_s` of
    the burners' input (None: not given). `discharged_m3` is let out at each heat-up, measured hot; None where nothing
    goes to waste.
    """

    outlet: str | None
    opens_pa: float
    rise_k: Bracket
    firing_s: Bracket | None
    discharged_m3: Bracket | None


@dataclass(frozen=True, slots=True)
class HeaterFacts:
    """The answer for one heater. Pressures are gauge at the heater's own height, in pascal; the rest is SI.

    `static_pa` and `cold_k` are None where no water reaches it. `expansion_m3` is that of its own
    `heated_volume_m3`; `shared_expansion_m3` that of all heated water which meets the same tanks, `short_m3`
    what those tanks cannot take of it at the limit, and `shares_with` the other heaters in it. `settled_pa`
    is the pressure at full temperature in the worst history, None where nothing holds it.
    """

    name: str
    kind: str
    line: int
    verdict: Verdict
    static_pa: float | None
    limit_pa: float
    limit_by: str
    cold_k: float | None
    hot_k: float
    heated_volume_m3: float
    expansion_m3: float
    shared_expansion_m3: float
    shares_with: tuple[str, ...]
    ladder: tuple[RungFacts, ...]
    stopped_by: Stops
    closes_if_shut: Closings
    loops: tuple[tuple[str, ...], ...]
    settled_pa: float | None
    short_m3: float
    need: Need | None
    locked: LockedFacts | None = None
    """What comes of it if nothing is done; None where nothing lifts."""
    tanks: tuple[str, ...] = ()
    stands_at: str = ""
    """The part at which the water of this answer stands: the heater, or a part of its loop that is worse off."""
    is_cut_off: bool = False
    """Only a shut valve joins it to a supply."""
    on_flow: bool = False
    """It fires only while water moves through it."""
    relieved_by: tuple[str, ...] = ()
    """Safety relief valves that only pipes and fittings join to it."""
    vented: bool = False
    """It stands open to the air with no valve between."""
    open_by_accident: tuple[str, ...] = ()
    """Crossovers and unchecked mixing valves that are all that keeps it open."""
    limit_own_pa: float | None = None
    """The limit as it reads at the part that sets it; None where nothing in the zone does."""
    open_by_bypass: tuple[str, ...] = ()
    """Reducers whose bypass is all that keeps it open, as water meets them."""
    boils_k: float | None = None
    """Temperature at which plain water boils under its static pressure; None where it warms a mixture, or is dry."""
    valves_to_tank: tuple[str, ...] = ()
    """Valves that can be shut on its way to the tanks that take its growth."""
    limit_at: str = ""
    """The part that sets the limit; empty where nothing in its reach does."""
    limit_way: tuple[str, ...] = ()
    """One-way devices that its water passes on the way there."""
    settled_least_pa: float | None = None
    """What a history is known to bring it to; `settled_pa` is what none passes, nearly always the same."""
    history: tuple[tuple[str, ...], ...] = ()
    """That history: heaters in the order in which they warm, those in one stage together."""
    broken: tuple[PlaceFacts, ...] = ()
    """Places that its growth helps to bring above their limits."""
    asked_method: str = ""
    """The sizing method of the rules, or its own, where that is not plain physics."""
    asked_tank_m3: float | None = None
    """What that method asks for of a controlled heater, for all the water that shares its tanks."""

    @property
    def is_past_limit(self) -> bool:
        """Whether its own water comes above the limit, and not only a place beyond a one-way device."""
        return self.settled_pa is not None and self.settled_pa > self.limit_pa + ROUNDING_PA

    @property
    def bound_pa(self) -> float:
        """At or below it a way out holds it open: the limit, or the static pressure where that is higher."""
        return max(self.limit_pa, self.static_pa or 0.0) + ROUNDING_PA

    usual_pa: float | None = None
    """Static pressure with each main as it is as a rule, where `static_pa` is that with each at its highest."""

    @property
    def is_at_highest(self) -> bool:
        """Whether its static pressure is that of a main at its highest, and lower as a rule."""
        if self.static_pa is None or self.usual_pa is None:
            return False
        return self.usual_pa < self.static_pa - ROUNDING_PA

    @property
    def way_out(self) -> RungFacts | None:
        """The first way to the street or to open air, at whatever pressure it opens."""
        return next((rung for rung in self.ladder if rung.role.is_way_out), None)

    @property
    def has_control(self) -> bool:
        """Whether its own water can push into a sound tank or an expansion relief valve."""
        return any(rung.role.is_control for rung in self.ladder)

    @property
    def reaches_a_tank(self) -> bool:
        """Whether its own water can push into a sound tank, which is more than to share in what a tank takes."""
        return any(rung.role is Role.TANK for rung in self.ladder)


@dataclass(frozen=True, slots=True)
class TankFacts:
    """An expansion tank where it stands; pressures gauge at the tank.

    `static_pa` is None where no water reaches it; `cut_in_pa` is what a well pump lets it fall to. `reached`
    says that water of a heater can push into it.
    """

    name: str
    precharge_pa: float
    static_pa: float | None
    cut_in_pa: float | None
    is_waterlogged: bool
    reached: bool
    on_hot_side: bool
    stopped_by: tuple[str, ...] = ()
    """Devices between it and the nearest heater's cold side, where water does not reach it."""
    method_charge_pa: float | None = None
    """What the sizing method of a heater that it serves charges it to; None where that is the line pressure."""

    @property
    def serves_a_pump(self) -> bool:
        """Whether it stands under a pump that lets the pressure fall before it starts, as on a well."""
        return self.cut_in_pa is not None and self.static_pa is not None and self.cut_in_pa < self.static_pa

    def is_charged_wrong(self, tolerance_pa: float) -> bool:
        """Whether its charge is neither that of the line nor of the method; on a well any from the cut-in up is."""
        if self.is_waterlogged or self.static_pa is None:
            return False
        tolerance_pa += ROUNDING_PA
        if self.method_charge_pa is not None and abs(self.precharge_pa - self.method_charge_pa) <= tolerance_pa:
            return False
        cut_in_pa = self.static_pa if self.cut_in_pa is None else self.cut_in_pa
        return not cut_in_pa - tolerance_pa <= self.precharge_pa <= self.static_pa + tolerance_pa


@dataclass(frozen=True, slots=True)
class ReliefFacts:
    """A relief valve and the parts that only pipes and fittings join it to; pressures gauge, at the valve.

    `static_pa` stands at it cold (None: no water), `rating_pa` is the lowest rating of a part it touches
    (`rated` names it), `safety_pa` the lowest set of a safety relief valve in its zone, `serves_w` the input of
    the heaters it touches and `serves_k` their highest setpoint; None where the file gives none.
    """

    name: str
    touches: tuple[str, ...]
    touches_vessel: bool
    set_pa: float
    static_pa: float | None
    opens_k: float | None
    capacity_w: float | None
    serves_w: float | None
    serves_k: float | None
    rated: str | None
    rating_pa: float | None
    safety_pa: float | None
    is_fed: bool = True
    """A supply goes on feeding it: through no shut valve, and not filled once by hand."""

    @property
    def runs(self) -> bool:
        """Whether its supply stands above its set, so that it never shuts."""
        return self.is_fed and self.static_pa is not None and self.static_pa > self.set_pa + ROUNDING_PA


@dataclass(frozen=True, slots=True)
class ReducerFacts:
    """A pressure reducer; pressures gauge at the reducer.

    `upstream_pa` stands before it cold (None: no water). `is_heated` says that water of a heater can push against its
    outlet, `has_tank` that water behind it can push into a sound expansion tank, `relief_set_pa` the lowest set, read
    at the valve, of an expansion relief valve that it can push into (None: there is none).
    """

    name: str
    set_pa: float
    upstream_pa: float | None
    is_heated: bool
    has_tank: bool
    relief_set_pa: float | None
    outlet_pa: float | None = None
    """What stands behind it cold; None where no water is."""
    passed_by: tuple[str, ...] = ()
    """Where more than its set stands behind it: the parts by which water comes past it through no reducer."""


@dataclass(frozen=True, slots=True)
class HinderedFacts:
    """A running pump that would drive a loop but for `reducer`; gauge pressures, at each part's own height.

    Water must come back past the outlet of the pump and on round to the reducer; at the part `at`, where `stands_pa`
    is, it comes with `comes_pa` only. `head_pa` is what the pump adds (None: not given), `head_helps` says that more of
    it would drive the loop.
    """

    pump: str
    reducer: str
    set_pa: float
    at: str
    comes_pa: float
    stands_pa: float
    head_pa: float | None
    head_helps: bool


@dataclass(frozen=True, slots=True)
class ReturnFacts:
    """Growth that goes back by the supply pipe: of `heaters`, by one way or by ways that meet, to the main `main`.

    `expansion_m3` is theirs together, `held_m3` the water in the building's own pipes on that way, `store_m3` the water
    they warm. `mixed_k` is the temperature of those pipes once the growth of well mixed stores has mixed into
    them; None where the pipes do not hold the growth.
    """

    main: str
    heaters: tuple[str, ...]
    expansion_m3: float
    held_m3: float
    store_m3: float
    mixed_k: float | None


@dataclass(frozen=True, slots=True)
class PumpedFacts:
    """A place that heating and cooling again and again without a draw pumps above its limit, though once does not.

    Growth of `heaters` comes there `through` one-way devices and stays. `part` sets the limit; `limit_pa`, and `top_pa`
    that it approaches, are gauge at that part. It passes the limit at heat-up number `heat_ups` (None: after more than
    anybody waits for). A tank of `tank_m3` `at` a part or a pipe before those devices, charged to `precharge_pa`
    (gauge, at the tank), stops it (None: none there does).
    """

    heaters: tuple[str, ...]
    part: str
    limit_pa: float
    top_pa: float
    heat_ups: int | None
    through: tuple[str, ...]
    at: str
    tank_m3: float | None
    nominal_m3: float | None
    precharge_pa: float


@dataclass(frozen=True, slots=True)
class ZoneFacts:
    """A zone: static pressure and limit, gauge at datum; `draw` is its lowest fixture, where pressure is highest."""

    static_pa: float
    limit: Limit
    draw: str | None
    draw_pa: float | None
    """Static pressure at that fixture, gauge at its height."""


class Use(StrEnum):
    """What water must come to a place for."""

    TAP = "tap"
    EMITTER = "emitter"
    HEATER = "heater"


@dataclass(frozen=True, slots=True)
class LowFacts:
    """A place that water must come to, and the least pressure that stands there, gauge at its height.

    Of a tap or an emitter `at` is itself; of a heater it is the highest place of what it warms. `static_pa` stands
    there with every supply at its highest. `is_driven` says that a pump drives its water round, `is_vented` that it
    stands open to the air. Plain water there comes to `hot_k`, stays liquid `vapour_pa` above the air, and boils at
    `boils_k` under the least pressure (None: no plain water is heated, or it stands under none).
    """

    name: str
    use: Use
    at: str
    elevation_m: float
    static_pa: float
    least_pa: float
    feed: Feed | None
    is_driven: bool = False
    is_vented: bool = False
    hot_k: float | None = None
    vapour_pa: float = 0.0
    boils_k: float | None = None

    @property
    def is_dry(self) -> bool:
        """Whether water does not come so high, or no higher."""
        return self.least_pa < ROUNDING_PA

    @property
    def at_lowest(self) -> bool:
        """Whether its least pressure is that of a supply at its lowest, and higher otherwise."""
        return self.least_pa < self.static_pa - ROUNDING_PA


@dataclass(frozen=True, slots=True)
class OutletFacts:
    """An outlet, and the pressure, gauge at its own height, from which on it takes water of its own zone."""

    name: str
    role: Role
    opens_pa: float


@dataclass(frozen=True, slots=True)
class ShutInFacts:
    """Water that goes either way within itself, and in which growth of `heaters` is not held; the worst `verdict`.

    `ends` are the connections in it. It is one zone, or several that pumps without a check join.
    """

    verdict: Verdict
    heaters: tuple[str, ...]
    ends: frozenset[End]


@dataclass(frozen=True, slots=True)
class Facts:
    """All that an analysis found out about a system."""

    system: System
    units: Units
    heaters: tuple[HeaterFacts, ...]
    tanks: tuple[TankFacts, ...]
    reliefs: tuple[ReliefFacts, ...]
    expansion_reliefs: tuple[ReliefFacts, ...]
    reducers: tuple[ReducerFacts, ...]
    returns: tuple[ReturnFacts, ...]
    """Growth that goes back to a main; found only under a profile that keeps it in the supply pipe."""
    zones: tuple[ZoneFacts, ...]
    hot_side_checks: tuple[str, ...]
    idle_pumps: tuple[str, ...]
    unreached: tuple[str, ...]
    pumped: tuple[PumpedFacts, ...] = ()
    """What heating and cooling again and again pumps up."""
    hindered_pumps: tuple[HinderedFacts, ...] = ()
    """Those of the idle pumps that a reducer keeps from driving a loop."""
    lows: tuple[LowFacts, ...] = ()
    """Taps, emitters, and of every heater the highest place of what it warms."""
    outlets: tuple[OutletFacts, ...] = ()
    """Every outlet; of a part that has several, its last counts."""
    shut_in: tuple[ShutInFacts, ...] = ()
    """Water in which the growth of a heater is trapped or sealed."""
    assumed: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """What was taken where the file says nothing, with the parts it was taken for."""

    def pressure(self, pressure_pa: float) -> str:
        """A pressure in the units of the report."""
        return show(pressure_pa, PRESSURE, self.units)

    def length(self, length_m: float) -> str:
        """A length or a height in the units of the report."""
        return show(length_m, LENGTH, self.units)

    def volume(self, volume_m3: float) -> str:
        """A volume in the units of the report."""
        return show(volume_m3, VOLUME, self.units)

    def power(self, power_w: float) -> str:
        """A rate of heat in the units of the report."""
        return show(power_w, POWER, self.units)

    def temperature(self, temperature_k: float) -> str:
        """A temperature in the units of the report."""
        return show(temperature_k, TEMPERATURE, self.units)
