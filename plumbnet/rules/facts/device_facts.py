"""Relief valves, reducers, and pumps that a reducer hinders."""

from dataclasses import dataclass

from plumbnet.rules.facts.limit_facts import ROUNDING_PA


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
