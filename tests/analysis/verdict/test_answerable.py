"""What nothing is computed of, in words that name a heater and what would be right; with budgets made small."""

import pytest
from conftest import system
from families import FAMILIES

import plumbnet
from plumbnet.analysis.equilibrium.heating_range import Unanswerable
from plumbnet.analysis.report import facts_of
from plumbnet.analysis.verdict import answerable
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.network.network import network_of
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.rule_profile import profile


def refused(family: str, parts: int) -> str:
    with pytest.raises(LayoutError) as error:
        plumbnet.check(plumbnet.read_bytes(FAMILIES[family](parts).encode()))
    return str(error.value)


def test_water_stands_no_higher_than_its_supply_lifts_it() -> None:
    high = network_of(system("street -> cv -> tee -> heater -> tap.hot", tee="elevation: 200 ft"))
    with pytest.raises(Unanswerable, match="its piping reaches higher than the supply can lift water") as error:
        facts_of(high, ruled_by(profile("general")))
    assert error.value.heater == "heater"


def test_heaters_that_warm_the_same_water_are_counted_up_to_the_budget(monkeypatch: pytest.MonkeyPatch) -> None:
    # four heaters on one loop warm the water of all four, each: 16 pieces
    monkeypatch.setattr(answerable, "MOST_WARMED", 16)
    plumbnet.check(plumbnet.read_bytes(FAMILIES["heaters-in-a-ring"](8).encode()))
    monkeypatch.setattr(answerable, "MOST_WARMED", 15)
    told = refused("heaters-in-a-ring", 8)
    assert "heater0: so many heaters warm the same loops that 16 pieces of water would have to be counted" in told
    assert "up to 15 are, so write the building as several layouts" in told


def test_zones_that_push_into_each_other_are_computed_up_to_the_budget(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(answerable, "MOST_COUPLED", 3)
    plumbnet.check(plumbnet.read_bytes(FAMILIES["tanks-in-a-chain-of-checks"](15).encode()))
    told = refused("tanks-in-a-chain-of-checks", 20)
    assert "heater0: 4 zones with heaters push into each other's water through one-way devices; up to 3" in told


def test_zones_beside_each_other_count_each_for_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(answerable, "MOST_COUPLED", 1)
    plumbnet.check(plumbnet.read_bytes(FAMILIES["zones-on-a-header"](20).encode()))
