"""What an answer takes for granted, with the parts it is taken for."""

from collections.abc import Mapping

import pytest
from conftest import layout, system

import plumbnet
from plumbnet.analysis.observations.assumptions import BOOSTED, COLD_PIPES, GAS

LONG = "street -> tee -> heater -> tap.hot"


def assumed(runs: str, **parts: str) -> Mapping[str, tuple[str, ...]]:
    return plumbnet.check(system(runs, **parts)).facts.assumed


def piped(runs: str, piece: str, **parts: str) -> Mapping[str, tuple[str, ...]]:
    """What is assumed of a layout in which one run is a pipe that holds a litre."""
    lines = layout(runs, **parts).splitlines()
    text = "\n".join(f"- {{path: '{piece}', volume: 1 L}}" if line == f"- {piece}" else line for line in lines)
    return plumbnet.check(plumbnet.read_bytes(text.encode())).facts.assumed


def test_booster_is_said_to_run_at_rest_and_to_stand_still_where_growth_pushes_back() -> None:
    found = assumed("street -> booster -> tee -> heater -> pump -> tap.hot", booster="check: false")
    assert found[BOOSTED] == ("booster",)
    assert BOOSTED == ("a booster pump runs for the pressure at rest and stands still for growth")
    assert BOOSTED not in assumed(LONG)


def test_gas_of_every_tank_is_said_to_stay_at_one_temperature() -> None:
    found = assumed(f"{LONG}\ntee -> tank\ntee -> tank2")
    assert found[GAS] == ("tank", "tank2")
    assert GAS not in assumed(LONG)


@pytest.mark.parametrize(
    ("runs", "piece", "heaters"),
    [
        ("street -> heater\nheater -> tap.hot", "heater -> tap.hot", ("heater",)),
        ("street -> heater\nheater -> tap.hot", "street -> heater", None),
        ("street -> tankless\ntankless -> tap.hot", "tankless -> tap.hot", None),
        ("street -> tee\ntee -> heater\nheater -> tee2\ntee2 -> pump -> tee\ntee2 -> tap.hot", "heater -> tee2", None),
        (
            "street -> tee\ntee -> heater\nheater -> tee2\ntee2 -> pump -> tee\ntee2 -> tap.hot",
            "tee2 -> tap.hot",
            ("heater",),
        ),
        ("street -> heater\nheater -> tee\ntee -> tap.hot\ntee -> pump\npump -> heater.return", "heater -> tee", None),
        (
            "street -> heater\nheater -> tee\ntee -> tap.hot\ntee -> pump\npump -> heater.return",
            "tee -> tap.hot",
            ("heater",),
        ),
    ],
)
def test_hot_pipes_that_no_pump_drives_are_said_to_stay_cold(
    runs: str, piece: str, heaters: tuple[str, ...] | None
) -> None:
    assert piped(runs, piece).get(COLD_PIPES) == heaters


def test_kind_of_several_words_is_told_without_its_underscore() -> None:
    found = assumed("street -> prv -> heater -> tap.hot\nstreet -> prv2 -> tap2.cold")
    assert found["a pressure reducer has no bypass"] == ("prv", "prv2")


def test_what_is_taken_is_said_in_these_words() -> None:
    assert (GAS, BOOSTED, COLD_PIPES) == (
        "the gas in a tank stays at one temperature; it is warmed slowly",
        "a booster pump runs for the pressure at rest and stands still for growth",
        "water in a hot pipe that no pump drives round stays cold",
    )
