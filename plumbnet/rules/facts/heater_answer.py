"""The answer for one heater."""

from dataclasses import dataclass

from plumbnet.layout.model import Role
from plumbnet.network.outlets import Closings, Stops
from plumbnet.physics.vessels import Bracket
from plumbnet.rules.facts.limit_facts import ROUNDING_PA, Basis, PlaceFacts
from plumbnet.rules.facts.tank_facts import Need
from plumbnet.rules.facts.verdict_words import Verdict


@dataclass(frozen=True, slots=True)
class RungFacts:
    """An outlet and the pressure, gauge at the heater's height, at which the way to it opens; the way by part names."""

    outlet: str
    role: Role
    kind: str
    opens_pa: float
    way: tuple[str, ...]


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
    limit_basis: Basis = "profile"
    """What the limit rests on."""
    limit_way: tuple[str, ...] = ()
    """One-way devices that its water passes on the way there."""
    settled_least_pa: float | None = None
    """What a history is known to bring it to; `settled_pa` is what none passes, nearly always the same."""
    history: tuple[tuple[str, ...], ...] = ()
    """That history: heaters in the order in which they warm, those in one stage together."""
    broken: tuple[PlaceFacts, ...] = ()
    """Places that its growth helps to bring above their limits, the nearest."""
    broken_left_out: bool = False
    """Whether it brings others above theirs as well: of very many places only so many are told as the budgets say."""
    asked_method: str = ""
    """The sizing method of the rules, or its own, where that is not plain physics."""
    asked_tank_m3: float | None = None
    """What that method asks for of a controlled heater, for all the water that shares its tanks."""
    usual_pa: float | None = None
    """Static pressure with each main as it is as a rule, where `static_pa` is that with each at its highest."""
    tempered_m3: float = 0.0
    """What of the heated volume a mixing valve keeps cooler than `hot_k`."""
    tempered_k: float | None = None
    """The highest temperature to which that comes."""

    @property
    def is_past_limit(self) -> bool:
        """Whether its own water comes above the limit, and not only a place beyond a one-way device."""
        return self.settled_pa is not None and self.settled_pa > self.limit_pa + ROUNDING_PA

    @property
    def bound_pa(self) -> float:
        """At or below it a way out holds it open: the limit, or the static pressure where that is higher."""
        return max(self.limit_pa, self.static_pa or 0.0) + ROUNDING_PA

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
