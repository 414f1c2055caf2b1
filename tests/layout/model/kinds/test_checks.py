"""Check valves and backflow preventers."""

import pytest
from usual import usual

from plumbnet.layout.model.part import Free, OneWay

KINDS = ["check_valve", "dual_check", "double_check", "reduced_pressure_assembly", "vacuum_breaker"]


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


def test_relief_port_of_an_assembly_is_no_outlet() -> None:
    assert list(usual("reduced_pressure_assembly").outlets()) == []
