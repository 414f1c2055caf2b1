"""A heater's case in, what the tanks that are there take of its expansion out, tank by tank by Boyle's law."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from plumbnet.analysis.required_tank import WarmedWater
from plumbnet.analysis.sizing_sheet.expansion_steps import growing, growing_section
from plumbnet.analysis.sizing_sheet.provenance import Provenance
from plumbnet.analysis.sizing_sheet.sheet_model import ExistingTank, Section, SheetItem
from plumbnet.analysis.sizing_sheet.tank_pressures import AIR, pressure_section
from plumbnet.analysis.verdict import Case
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.sizing import BOYLE, Step, step
from plumbnet.physics.vessels import Tank
from plumbnet.rules import listed
from plumbnet.rules.facts import Verdict

_HOLDS = frozenset({Verdict.CONTROLLED, Verdict.TRAPPED})
"""Verdicts under which tanks settle somewhere."""
_ROUNDING = 1e-9
"""Share of the growth that sums leave over."""
_MOST_TERMS = 25
"""Numbers that are added up without brackets."""


@dataclass(frozen=True)
class ExistingTanks:
    """The tanks that share a heater's expansion."""

    case: Case
    origins: Provenance

    def at_hand(self) -> ExistingTank | None:
        """What they can do; None where there are none."""
        if not self.tanks:
            return None
        takes_m3 = math.fsum(tank.uptake_m3(self._limit_abs_pa) for _, tank in self.tanks)
        settled_pa = self._settled_abs_pa
        return ExistingTank(
            tanks=tuple(name for name, _ in self.tanks),
            heaters=self.case.company.heaters,
            growth_m3=self.growth_m3,
            takes_m3=takes_m3,
            short_m3=max(0.0, self.growth_m3 - takes_m3),
            settled_pa=None if settled_pa is None else settled_pa - ATMOSPHERE_PA - self.case.head_pa,
        )

    def sections(self, *, grown: tuple[WarmedWater, ...]) -> Iterator[Section]:
        """What each tank takes up to the limit, all of them together, and where they settle.

        Before them the growth of the water, but for waters whose growth has been shown.
        """
        yield from (growing_section(self.case.tank.task, water) for water in self.waters if water not in grown)
        for name, tank in self.tanks:
            yield pressure_section(
                f"What {name} takes up to the limit", self._taking(name, tank, "p_2", self._limit_abs_pa)
            )
        if self.tanks:
            yield Section("The tanks at hand at the limit", (), tuple(self._balance()))
        if self._settled_abs_pa is not None:
            yield from self._settled(self._settled_abs_pa)

    @property
    def tanks(self) -> tuple[tuple[str, Tank], ...]:
        """The sound ones, by name; none for a heater that stays cold while nothing is drawn."""
        if self.case.heated.is_idle:
            return ()
        return tuple(self.case.settling.loading.tanks(self.case.company.zones))

    @property
    def waters(self) -> tuple[WarmedWater, ...]:
        """The heated water that shares them; none where there are none."""
        if not self.tanks:
            return ()
        return self.case.tank.waters_in(self.case.company.zones)

    @property
    def growth_m3(self) -> float:
        """What they would have to take up."""
        return self.case.company.expansion_m3

    @property
    def _settled_abs_pa(self) -> float | None:
        """Where they settle, absolute at datum; None where they do not, or have nothing to do."""
        settled_pa = self.case.settled_pa if self.case.verdict in _HOLDS else None
        return None if settled_pa is None else settled_pa + ATMOSPHERE_PA

    @property
    def _limit_abs_pa(self) -> float:
        return self.case.limit.pressure_pa + ATMOSPHERE_PA

    def _taking(self, name: str, tank: Tank, symbol: str, level_abs_pa: float) -> Iterator[SheetItem | Step]:
        """A tank's own numbers, and the steps to what it takes up to a level, absolute at datum."""
        charge_pa = tank.charge_abs_pa - ATMOSPHERE_PA
        static, end = tank.start_abs_pa - tank.head_pa, level_abs_pa - tank.head_pa
        computed = "computed: that of the zone, at the height of the tank"
        yield SheetItem("V_n", f"volume of {name}", tank.volume_m3, "volume", self.origins.field(name, "volume"))
        yield SheetItem(
            "d_0", f"charge of {name}", charge_pa, "pressure difference", self.origins.field(name, "precharge")
        )
        yield SheetItem("p_static", f"static pressure at {name}", static, "pressure", computed)
        yield SheetItem(symbol, f"limit at {name}", end, "pressure", computed)
        if tank.most_m3 is not None:
            origin = self.origins.field(name, "acceptance")
            yield SheetItem("V_most", f"most water {name} lets in", tank.most_m3, "volume", origin)
        charge = tank.charge_abs_pa
        numbers = {"p_atm": AIR.value, "d_0": charge_pa}
        yield step("p_0", "charge, absolute", "p_atm + d_0", charge, "gauge to absolute", **numbers)
        numbers = {"p_static": static, "p_0": charge}
        yield step("p_1", "start", "max(p_static, p_0)", max(static, charge), BOYLE, **numbers)
        yield uptake_step("V_in", name, tank, symbol, end)

    def _balance(self) -> Iterator[Step]:
        """What all take together, and what finds no room; a sum of one has no step."""
        taken = [tank.uptake_m3(self._limit_abs_pa) for _, tank in self.tanks]
        growths = [growing(self.case.tank.task, water)[-1] for water in self.waters]
        total = sum_step("V_taken", "taken up by all", taken)
        grown = sum_step("V_growth", "growth of all heated water", [one.value for one in growths])
        growth = "V_growth" if len(growths) > 1 else growths[0].symbol
        takes = "V_taken" if len(taken) > 1 else "V_in"
        short = max(0.0, grown.value - total.value)
        yield from (each for each in (total, grown) if len(each.numbers) > 1)
        numbers = {growth: grown.value, takes: total.value}
        yield step("V_short", "finds no room", f"max(0, {growth} - {takes})", short, "by definition", **numbers)

    def _settled(self, level_abs_pa: float) -> Iterator[Section]:
        """Where the pressure comes to rest: what each tank has taken then, and what an outlet has let off."""
        pool = self.case.settling.share(self.case.zone)
        tanks = tuple(self.case.settling.loading.tanks(pool.zones))
        steps = [uptake_step("V_in", name, tank, "p_settled", level_abs_pa - tank.head_pa) for name, tank in tanks]
        if not steps:
            return
        total = sum_step("V_taken", "taken up by all, as much as the water grows by", [each.value for each in steps])
        title = f"When all is hot ({listed(pool.heaters)})"
        off = pool.expansion_m3 - total.value
        if off > _ROUNDING * pool.expansion_m3:
            total = sum_step("V_taken", "taken up by all", [each.value for each in steps])
            numbers = {"V_growth": pool.expansion_m3, "V_taken": total.value}
            let_off = step("V_off", "let off by an outlet", "V_growth - V_taken", off, "by definition", **numbers)
            yield Section(title, (), (*steps, total, let_off))
        else:
            yield Section(title, (), (*steps, total))


def uptake_step(symbol: str, name: str, tank: Tank, end: str, end_abs_pa: float) -> Step:
    """What a tank takes between its start and an end, both absolute at the tank; its membrane may stop it before.

    >>> uptake_step("V_in", "tank", Tank(0.2, 1e5, 1e5), "p_2", 2e5).value
    0.1
    """
    start = max(tank.start_abs_pa - tank.head_pa, tank.charge_abs_pa)
    numbers = {"V_n": tank.volume_m3, "p_0": tank.charge_abs_pa, "p_1": start, end: end_abs_pa}
    room = f"V_n * (p_0 / p_1 - p_0 / {end})"
    if tank.most_m3 is not None:
        numbers["V_most"] = tank.most_m3
        room = f"min({room}, V_most - min(V_most, V_n * (1 - p_0 / p_1)))"
    value = tank.uptake_m3(end_abs_pa + tank.head_pa)
    return step(symbol, f"taken up by {name}", f"max(0, {room})", value, BOYLE, **numbers)


def sum_step(symbol: str, name: str, values: Iterable[float]) -> Step:
    """The step from several numbers to their sum.

    >>> sum_step("V_t", "both", [0.5, 0.25]).formula
    'V_t1 + V_t2'
    """
    numbers = {f"{symbol}{place}": value for place, value in enumerate(values, start=1)}
    return step(symbol, name, _summed(list(numbers)), math.fsum(numbers.values()), "by definition", **numbers)


def _summed(terms: Sequence[str]) -> str:
    """Terms with plus signs between; of very many some are added up in brackets, for nobody reads a sum of hundreds."""
    while len(terms) > _MOST_TERMS:
        groups = (terms[start : start + _MOST_TERMS] for start in range(0, len(terms), _MOST_TERMS))
        terms = [f"({' + '.join(group)})" if len(group) > 1 else group[0] for group in groups]
    return " + ".join(terms)
