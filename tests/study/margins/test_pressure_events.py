"""The pressures at which something may turn."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.layout.units.units import PASCAL_PER_METRE
from plumbnet.study.margins.pressure_events import CLOSE_PA, PressureEvents

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
RUNS = """street -> cv -> prv -> tee -> heater -> tap.hot
          tee -> tank"""
REPORT = plumbnet.check(
    system(RUNS, heater=RELIEVED, tank="precharge: 45 psi", prv="set: 50 psi", tap="elevation: 10 ft")
)
TAP_PA = 3.048 * PASCAL_PER_METRE


def has(events: list[float], pressure_pa: float) -> bool:
    return any(abs(event - pressure_pa) <= CLOSE_PA for event in events)


def test_limits_sets_charges_and_the_least_at_taps_are_met_by_a_street() -> None:
    events = PressureEvents(REPORT).at("street")
    for met in (45 * PSI, 50 * PSI, 80 * PSI + TAP_PA, 150 * PSI, 8 * PSI + TAP_PA, TAP_PA):
        assert has(events, met), met
    assert events == sorted(events)
    assert not has(events, 60 * PSI), "its own pressure moves with it"


def test_charge_meets_what_stands_before_the_tank() -> None:
    assert PressureEvents(REPORT).at("tank") == pytest.approx([50 * PSI])


def test_events_are_as_a_gauge_at_the_part_would_read_them() -> None:
    runs = """street -> cv -> tee -> heater -> tap.hot
              tee -> tank"""
    raised = plumbnet.check(system(runs, heater=RELIEVED, tank="elevation: 10 ft"))
    assert PressureEvents(raised).at("tank") == pytest.approx([60 * PSI - TAP_PA], abs=1)


def test_booster_moves_what_lies_behind_it() -> None:
    report = plumbnet.check(system("street -> booster -> heater -> tap.hot", heater=RELIEVED))
    assert has(PressureEvents(report).at("street"), 80 * PSI - 40 * PSI)
