"""A report and a heater in, the calculation sheet of its expansion tank out."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from plumbnet.analysis.report import Report
from plumbnet.analysis.required_tank import ALWAYS, WarmedWater, charge_pa, nominal_m3, sized
from plumbnet.analysis.sizing_sheet.cautions import cautions, sheet_cautions
from plumbnet.analysis.sizing_sheet.existing_tanks import ExistingTanks, sum_step
from plumbnet.analysis.sizing_sheet.expansion_steps import mixing, volume
from plumbnet.analysis.sizing_sheet.provenance import Provenance
from plumbnet.analysis.sizing_sheet.sheet_inputs import SheetInputs
from plumbnet.analysis.sizing_sheet.sheet_model import MethodUsed, Section, Sheet, SheetItem, SheetResult
from plumbnet.analysis.sizing_sheet.tank_pressures import AIR, TankPressures, pressure_section
from plumbnet.analysis.verdict import Case, judge_of
from plumbnet.physics.fluids import ATMOSPHERE_PA, OutsideWater
from plumbnet.physics.sizing import BOYLE, METHODS, MissingInput, OutsideMethod, Sizing, Step, step
from plumbnet.physics.vessels import NoTank
from plumbnet.rules import NO_TANK, Profile, listed, no_tank
from plumbnet.rules.facts import HeaterFacts, Need

__all__ = ["Sheet", "sheet", "sheets"]

_LISTED = "the sizes that the file lists"
_SERIES = "a round series that comes with the program"
_SAME = 1e-4
"""Share of its size by which the tank that was tried may differ from that of the formula: both come to one pascal."""


def sheet(report: Report, heater: HeaterFacts, *, method: str | None = None) -> Sheet:
    """The calculation for one heater, by the method named or else the heater's own or the profile's.

    Raises KeyError for an unknown method.
    """
    return next(sheets(report, [heater], method=method))


def sheets(report: Report, heaters: list[HeaterFacts], *, method: str | None = None) -> Iterator[Sheet]:
    """The same for several heaters of a report."""
    judge = judge_of(report.network, report.rules)
    origins = Provenance(report.system, report.facts.units)
    heated = {each.name: each for each in report.network.heated}
    for heater in heaters:
        case = judge.case(heated[heater.name])
        yield _Draft(report, heater, case, origins, method).sheet()


@dataclass(frozen=True)
class _Draft:
    """One heater's sheet while it is put together."""

    report: Report
    heater: HeaterFacts
    case: Case
    origins: Provenance
    asked: str | None

    def sheet(self) -> Sheet:
        report, record, hand = self.report, self.report.system.record, ExistingTanks(self.case, self.origins)
        inputs = SheetInputs(self.case, self.origins, hand.waters)
        return Sheet(
            file=record.file,
            sha256=record.sha256,
            title=report.system.title,
            scenario=report.scenario,
            rules=self._profile.profile,
            rules_title=self._profile.title,
            rules_sha256=self._profile.sha256,
            heater=self.heater,
            method=self.method,
            inputs=tuple(inputs.items()),
            contents=tuple(inputs.contents()),
            sections=(self.pressures, *self._tank_sections(), *hand.sections(grown=self._grown)),
            outcome=self.outcome,
            at_hand=hand.at_hand(),
            assumptions=tuple(sheet_cautions(report, self.case)),
            cautions=tuple(cautions(report, self.heater, self.case, self.method, self._sizings)),
            units=report.facts.units,
        )

    @property
    def _profile(self) -> Profile:
        """The profile that judges the heater."""
        return self.report.profile_of(self.heater.name)

    @cached_property
    def method(self) -> MethodUsed:
        """The method, and who chose it."""
        ruling = self._profile.sizing
        own = self.case.heated.source.sizing
        chosen = f"profile {self._profile.profile}: {ruling.clause}"
        if own is not None:
            chosen = self.origins.field(self.heater.name, "sizing")
        if self.asked is not None:
            chosen = "asked for"
        used = METHODS[self.asked or own or ruling.value]
        return MethodUsed(used.name, used.title, used.source, used.verified, chosen)

    @cached_property
    def pressures(self) -> Section:
        """The pressures at the tank."""
        judging = self.report.profile_of(self.case.limit.part or self.heater.name)
        return TankPressures(self.case, judging, self.origins).section(self.method.name)

    @cached_property
    def _sizings(self) -> tuple[Sizing, ...]:
        """A tank for each water; none where the method has no answer."""
        return () if self._refusal else sized(self.case.tank.task, self.method.name)

    @cached_property
    def _refusal(self) -> str:
        try:
            sized(self.case.tank.task, self.method.name)
        except NoTank:
            return NO_TANK
        except (MissingInput, OutsideMethod, OutsideWater) as error:
            return str(error)
        return ""

    def _tank_sections(self) -> Iterator[Section]:
        """The steps of the method for each water, then what joins them and what the next size settles at."""
        for water, sizing in zip(self.case.tank.waters, self._sizings, strict=False):
            title = f"Tank for the water of {listed(water.heaters)}, {self.method.title}"
            yield pressure_section(title, [volume(water), *mixing(water), *sizing.steps])
        if len(self._sizings) > 1:
            yield Section("One tank for all of it", (), (self._whole(),))
        if self._is_tried:
            yield Section("The tank tried in the layout", tuple(self._tried()))
        else:
            yield from self._next_size()

    @property
    def _need(self) -> Need | None:
        """The tank that the report asks for; a method that somebody asks for goes its own way."""
        return self.heater.need if self.asked is None else None

    @property
    def _is_tried(self) -> bool:
        """Whether the steps of the method do not lead to the tank that the report asks for."""
        tank_m3 = None if self._need is None else self._need.asked_m3 or self._need.tank_m3
        return tank_m3 is not None and not math.isclose(tank_m3, self._by_method_m3, rel_tol=_SAME)

    @property
    def _by_method_m3(self) -> float:
        return math.fsum(one.tank_m3 for one in self._sizings)

    def _tried(self) -> Iterator[SheetItem]:
        """The least tank that holds, and what the next size comes to."""
        need = self._need
        if need is None or need.tank_m3 is None:
            return
        others = f", beside {listed(need.beside)} as {'they stand' if len(need.beside) > 1 else 'it stands'}"
        origin = "found by halving: each size hung there, and every order in which the heaters warm looked at"
        yield SheetItem("V_t", f"least tank that holds{others if need.beside else ''}", need.tank_m3, "volume", origin)
        if need.nominal_m3 is not None:
            settled_pa = self.case.tank.comes_to_pa(need.nominal_m3)
            yield SheetItem("d_settled", "what the next size comes to", settled_pa, "pressure difference", origin)

    @property
    def _grown(self) -> tuple[WarmedWater, ...]:
        """Waters whose growth, as it is, the steps to the tank have shown."""
        return self.case.tank.waters if self._sizings and self.method.name == ALWAYS else ()

    def _whole(self) -> Step:
        return sum_step("V_t", "tank", [one.tank_m3 for one in self._sizings])

    @cached_property
    def outcome(self) -> SheetResult:
        """The tank, its size and charge, or why there is none."""
        task, need = self.case.tank.task, self._need
        if need is not None and (not self._refusal or self._refusal == NO_TANK):
            return self._wanted(need)
        if self._refusal:
            return SheetResult(task.place.name, refusal=self._refusal)
        tank_m3 = self._by_method_m3
        system = self.report.system
        settled = self._settled_step()
        return SheetResult(
            at=task.place.name,
            why=task.place.why,
            tank_m3=tank_m3,
            method_m3=tank_m3,
            nominal_m3=nominal_m3(tank_m3, system),
            sizes_from=_LISTED if system.tank_sizes_m3 else _SERIES,
            charge_pa=None if self._sizings[0].charge_abs_pa is None else charge_pa(task, self._sizings),
            settled_pa=None if settled is None else settled.value - ATMOSPHERE_PA,
        )

    def _wanted(self, need: Need) -> SheetResult:
        """The tank that the report asks for."""
        if need.tank_m3 is None:
            return SheetResult(need.at, refusal=no_tank(need), why=need.why)
        settled = None if self._is_tried else self._settled_step()
        settled_pa = None if settled is None else settled.value - ATMOSPHERE_PA
        if self._is_tried and need.nominal_m3 is not None:
            settled_pa = self.case.tank.comes_to_pa(need.nominal_m3)
        is_open = bool(self._sizings) and self._sizings[0].charge_abs_pa is None
        return SheetResult(
            at=need.at,
            tank_m3=need.asked_m3 or need.tank_m3,
            nominal_m3=need.nominal_m3,
            sizes_from=_LISTED if self.report.system.tank_sizes_m3 else _SERIES,
            charge_pa=None if is_open else need.precharge_pa,
            settled_pa=settled_pa,
            method_m3=self._by_method_m3,
            holds_m3=need.tank_m3 if need.asked_m3 is not None or self._is_tried else None,
            beside=need.beside,
            why=need.why,
        )

    def _next_size(self) -> Iterator[Section]:
        settled = self._settled_step()
        if settled is not None:
            numbers = {"p_settled": settled.value, "p_atm": AIR.value}
            gauge_pa = settled.value - AIR.value
            gauge = step("d_settled", "the same, gauge", "p_settled - p_atm", gauge_pa, BOYLE, **numbers)
            yield Section("With the next size up", (), (settled, gauge))

    def _settled_step(self) -> Step | None:
        """What a tank of the next size settles at; None where there is no such size or no charge."""
        if not self._sizings:
            return None
        first, tank_m3 = self._sizings[0], math.fsum(one.tank_m3 for one in self._sizings)
        size_m3 = nominal_m3(tank_m3, self.report.system)
        if size_m3 is None or first.charge_abs_pa is None or first.start_abs_pa is None:
            return None
        water_m3 = math.fsum(one.expansion_m3 + one.reserve_m3 for one in self._sizings)
        numbers = {"p_0": first.charge_abs_pa, "p_1": first.start_abs_pa, "V_n": size_m3, "V_w": water_m3}
        value = first.charge_abs_pa * size_m3 / (first.charge_abs_pa * size_m3 / first.start_abs_pa - water_m3)
        formula = "p_0 * V_n / (p_0 * V_n / p_1 - V_w)"
        return step("p_settled", "pressure at which it settles", formula, value, BOYLE, **numbers)
