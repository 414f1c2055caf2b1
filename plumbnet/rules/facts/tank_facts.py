"""Expansion tanks as they are, as they ought to be charged, and as they are wanted."""

from dataclasses import dataclass

from plumbnet.rules.facts.limit_facts import ROUNDING_PA


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
    why: str = ""
    """Why there, as what follows "it is": the cold header that a and b share."""
    is_left_out: bool = False
    """Whether its size was not worked out, so that there may be one: too many zones push into each other."""


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
