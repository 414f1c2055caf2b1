"""Check valves and backflow preventers."""

import pytest
from usual import usual

from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.part import Free, OneWay

KINDS = [
    "check_valve",
    "dual_check",
    "double_check",
    "reduced_pressure_assembly",
    "vented_dual_check",
    "vacuum_breaker",
]


@pytest.mark.parametrize("kind", KINDS)
def test_water_passes_forward_and_never_back(kind: str) -> None:
    assert list(usual(kind).passages()) == [OneWay("in", "out")]
    assert usual(kind).is_check


@pytest.mark.parametrize("kind", KINDS)
def test_check_stuck_open_lets_water_pass_both_ways(kind: str) -> None:
    assert list(usual(kind, state="stuck_open").passages()) == [Free("in", "out")]
    assert usual(kind).failures == {"stuck_open": {"state": "stuck_open"}}


@pytest.mark.parametrize("kind", KINDS)
def test_check_opens_at_the_pressure_it_is_given(kind: str) -> None:
    assert list(usual(kind, opens="3 kPa").passages()) == [OneWay("in", "out", 3_000)]


@pytest.mark.parametrize("kind", ["reduced_pressure_assembly", "vented_dual_check"])
def test_port_or_vent_between_two_tight_checks_is_no_outlet(kind: str) -> None:
    assert list(usual(kind).outlets()) == []


def test_each_kind_says_how_it_keeps_water_from_coming_back() -> None:
    said = {kind: protection.value for kind in KINDS if (protection := usual(kind).protects) is not None}
    assert said == {
        "check_valve": "single check",
        "dual_check": "dual check",
        "double_check": "double check",
        "reduced_pressure_assembly": "reduced pressure",
        "vented_dual_check": "vented dual check",
        "vacuum_breaker": "vacuum breaker",
    }
    assert usual("open_tank").protects is BackflowProtection.AIR_GAP
    assert usual("valve").protects is None
