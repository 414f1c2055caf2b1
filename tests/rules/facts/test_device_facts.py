from dataclasses import replace

import pytest

from plumbnet.rules.facts.device_facts import ReliefFacts

RELIEF = ReliefFacts(
    "relief",
    touches=("heater",),
    touches_vessel=True,
    set_pa=1e6,
    static_pa=None,
    opens_k=None,
    capacity_w=None,
    serves_w=None,
    serves_k=None,
    rated=None,
    rating_pa=None,
    safety_pa=None,
)


@pytest.mark.parametrize(
    ("static_pa", "is_fed", "runs"),
    [(1e6 + 1.0, True, False), (1e6 + 1.1, True, True), (1e6 + 1.1, False, False), (None, True, False)],
)
def test_relief_valve_runs_where_its_supply_stands_above_its_set(
    static_pa: float | None, *, is_fed: bool, runs: bool
) -> None:
    assert replace(RELIEF, static_pa=static_pa, is_fed=is_fed).runs is runs
