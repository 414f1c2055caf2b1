"""The place of a tank on the cold header, and the reason that is given for it."""

import pytest
from conftest import drawn

from plumbnet.analysis.required_tank.header_place import HeaderPlaces
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.rule_profile import profile

TWO = """street -> cv -> tee -> valve -> heater -> tee3 -> tap.hot
         tee -> valve2 -> heater2 -> tee3"""
BEHIND = "street -> cv -> tee -> valve -> tee2 -> heater -> tap.hot\ntee -> tap.cold\ntee2 -> tap2.cold"
RETURN = "street -> cv -> tee -> valve -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1\ntee -> tap.cold"


def place(runs: str, rules: str = "general", heater: str = "heater", **parts: str) -> tuple[str, str]:
    """Where the tank of a heater connects, and why there."""
    network = drawn(runs, **parts).network
    heated = next(one for one in network.heated if one.name == heater)
    found = HeaderPlaces(network, ruled_by(profile(rules))).of(heated)
    assert found is not None
    return found.name, found.why


def test_heaters_side_by_side_have_it_before_both_their_valves() -> None:
    why = "the cold header that heater and heater2 share, upstream of valve and valve2: "
    at = ("tee", f"{why}one heater can be shut off without the tank")
    assert place(TWO) == place(TWO, heater="heater2") == at


def test_heaters_side_by_side_have_it_there_where_the_rules_ask_for_a_valve_at_each() -> None:
    # behind one of the valves it would be parted from the other heater by two
    assert place(TWO, "upc-2018")[0] == "tee"


def test_single_heater_has_it_before_its_valve() -> None:
    assert place(BEHIND) == (
        "tee",
        "the cold pipe of heater, upstream of valve: no service on heater shuts off the tank",
    )


@pytest.mark.parametrize(
    ("rules", "why"),
    [
        ("upc-2018", "the rules ask for a valve at the heater, and it must not part the two"),
        ("uk-2010", "the rules want none there that a hand can shut"),
    ],
)
def test_single_heater_has_it_behind_its_valve_where_the_rules_want_none_between(rules: str, why: str) -> None:
    assert place(BEHIND, rules) == ("tee2", f"the cold pipe of heater, with no valve between: {why}")


def test_pipe_that_another_heater_feeds_is_not_called_cold() -> None:
    runs = "street -> cv -> heater -> tee -> cv2 -> tee2 -> valve -> heater2 -> tap.hot\ntee2 -> tap2.hot"
    hot = "the pipe that feeds heater2 with hot water, for which the tank has to be made"
    assert place(runs, heater="heater2") == (
        "tee2",
        f"{hot}, upstream of valve: no service on heater2 shuts off the tank",
    )
    assert place(runs)[1] == "the cold pipe of heater"


def test_locked_valve_parts_nothing() -> None:
    assert place(BEHIND, valve="locked: true") == ("tee2", "the cold pipe of heater")


def test_valve_that_shuts_off_the_whole_house_is_not_the_heaters() -> None:
    runs = "street -> cv -> tee1 -> valve -> tee -> heater -> tap.hot\ntee -> tap.cold"
    assert place(runs) == ("tee", "the cold pipe of heater")


def test_house_with_nothing_but_a_valve_before_the_heater_gets_a_tee_before_it() -> None:
    at, why = place("street -> cv -> valve -> heater -> tap.hot")
    assert at == "cv -> valve"
    assert why == "the cold pipe of heater, upstream of valve: no service on heater shuts off the tank"


def test_circulation_comes_back_behind_it() -> None:
    why = "the cold pipe of heater, upstream of tee1, where the circulation comes back"
    assert place("street -> cv -> tee -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1") == ("tee", why)
    assert place(RETURN)[0] == "tee"


def test_rules_that_want_no_valve_between_come_before_the_circulation() -> None:
    runs = "street -> cv -> tee -> tee1 -> valve -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1"
    assert place(runs)[0] == "tee"
    assert place(runs, "uk-2010")[0] == "valve -> heater"
    assert place(RETURN, "uk-2010")[0] == "valve -> tee1"


def test_sound_tank_that_hangs_there_shows_the_place() -> None:
    runs = f"{BEHIND}\ntee -> tee4 -> tank\ntee4 -> tap3.cold"
    assert place(runs) == ("tee4", "where tank hangs already")


@pytest.mark.parametrize(
    ("joined", "state"), [("tee2 -> tank", "sound"), ("tap3.cold -> tee4 -> tee\ntee4 -> tank", "waterlogged")]
)
def test_tank_behind_the_valve_or_full_of_water_does_not(joined: str, state: str) -> None:
    assert place(f"{BEHIND}\n{joined}", tank=f"state: {state}")[0] == "tee"


def test_many_heaters_are_counted_and_not_named() -> None:
    rows = "\n".join(f"tee -> valve{n} -> heater{n} -> tap{n}.hot" for n in range(1, 6))
    at, why = place(f"street -> cv -> tee\n{rows}", heater="heater3")
    assert at == "tee"
    assert why.startswith("the cold header that the 5 heaters share, upstream of the 5 valves: one heater ")


def test_heater_that_no_water_reaches_has_no_header() -> None:
    network = drawn("street -> tap.cold\ntee -> heater -> tap2.hot").network
    assert HeaderPlaces(network, ruled_by(profile("general"))).of(network.heated[0]) is None
