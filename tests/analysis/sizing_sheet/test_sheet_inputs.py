"""What goes into a sheet, and where it came from."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.sizing_sheet.sheet_model import Sheet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet


def sheet_of(runs: str, **parts: str) -> Sheet:
    made = plumbnet.check(system(runs, **parts))
    return sheet(made, made.heaters[0])


def test_each_water_has_its_two_temperatures() -> None:
    made = sheet_of(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot", heater2="setpoint: 160 degF"
    )
    assert [(item.symbol, item.name) for item in made.inputs] == [
        ("T_1", "cold, heater"),
        ("T_2", "hot, heater"),
        ("T_1", "cold, heater2"),
        ("T_2", "hot, heater2"),
    ]


def test_cold_water_names_the_supply_it_came_from_or_that_none_did() -> None:
    (cold, _) = sheet_of("street -> cv -> heater -> tap.hot").inputs
    assert cold.origin.startswith("street, ")
    (cold, _) = sheet_of("street -> tee\nheater -> tap.hot").inputs
    assert cold.origin == "default: no supply reaches it, and cold water is taken at this temperature"


def test_of_two_supplies_that_reach_it_the_colder_is_named() -> None:
    runs = "street -> tee -> heater -> tap.hot\nstreet2 -> tee"
    for colder, other in (("street", "street2"), ("street2", "street")):
        parts = {colder: "pressure: 60 psi, temperature: 40 degF", other: "pressure: 60 psi, temperature: 55 degF"}
        (cold, _) = sheet_of(runs, **parts).inputs
        assert cold.value == pytest.approx(277.594, abs=1e-3)
        assert cold.origin.startswith(f"{colder}, line ")


def test_water_of_a_later_heater_names_its_own_supply() -> None:
    runs = "street -> cv -> heater -> tap.hot\nstreet2 -> cv2 -> heater2 -> tap2.hot"
    made = plumbnet.check(system(runs, street2="pressure: 60 psi, temperature: 45 degF"))
    (first, _), (second, _) = (sheet(made, heater).inputs for heater in made.heaters)
    assert first.origin.startswith("street, ")
    assert second.origin.startswith("street2, ")


def test_water_that_only_shares_the_tanks_at_hand_is_told_as_such() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tankless -> tap2.hot\ntee -> tank"
    made = plumbnet.check(system(runs))
    whose = [{one.heater for one in sheet(made, heater).contents} for heater in made.heaters]
    assert whose == [{"heater"}, {"tankless"}]


def test_antifreeze_goes_in_with_its_share() -> None:
    glycol = "volume: 10 gal, setpoint: 180 degF, antifreeze: {glycol: propylene, share: 30 %}"
    made = sheet_of("street -> prv -> tee -> boiler", boiler=f"kind: boiler, {glycol}")
    assert made.inputs[-1].name == "share of propylene glycol by volume, boiler"
    assert made.inputs[-1].value == 0.3


def test_pieces_of_water_add_up_to_what_is_heated() -> None:
    made = sheet_of("street -> cv -> tee -> heater -> tee2 -> pump -> store -> tee\ntee2 -> tap.hot")
    assert sum(one.volume_m3 for one in made.contents) == made.heater.heated_volume_m3
    assert {one.heater for one in made.contents} == {"heater"}


def test_water_that_shares_tanks_with_less_than_the_tank_is_for_is_listed_with_them() -> None:
    """The tank at the last is for both; what stands beside the first takes the first's water alone."""
    made = sheet_of(
        """street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot
        heater1.relief -> relief1
        heater2.relief -> relief2
        tee1 -> tank1
        tee2 -> tank2""",
        tank1="volume: 10 gal",
        tank2="volume: 5.2 gal",
    )
    assert [(one.name, one.heater, one.water) for one in made.contents] == [
        ("heater1", "heater1", "heater1 and heater2"),
        ("heater2", "heater2", "heater1 and heater2"),
        ("heater1", "heater1, with the tanks at hand", "heater1, with the tanks at hand"),
    ]


LOOPS = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  split: tee
  one: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  two: {kind: storage_heater, volume: 60 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  far-one: tee
  far-two: tee
  pump-one: circulator
  pump-two: circulator
  tap: fixture
runs:
  - street -> cv -> split -> one
  - split -> two
  - {path: one -> far-one -> pump-one -> one.return, pipe: copper-L 3/4 in, length: 30 ft}
  - {path: two -> far-two -> pump-two -> two.return, pipe: copper-L 3/4 in, length: 60 ft}
  - far-one -> tap.hot
  - far-two -> tap.cold
"""


def test_each_piece_is_warmed_by_the_heater_whose_loop_it_is_in() -> None:
    """Two heaters, warmed alike and counted together, each with a loop of its own."""
    made = plumbnet.check(plumbnet.read_bytes(LOOPS.encode()))
    found = sheet(made, made.heaters[0]).contents
    assert {one.water for one in found} == {"one and two"}
    assert {(one.name, one.heater) for one in found} == {
        ("one", "one"),
        ("pipe one -> far-one", "one"),
        ("pipe far-one -> pump-one", "one"),
        ("pipe pump-one -> one", "one"),
        ("two", "two"),
        ("pipe two -> far-two", "two"),
        ("pipe far-two -> pump-two", "two"),
        ("pipe pump-two -> two", "two"),
    }


def test_loop_that_two_heaters_share_is_warmed_by_both_and_each_store_by_its_own() -> None:
    joined = LOOPS.replace("pump-two -> two.return", "pump-two -> one.return").replace(
        "pump-one -> one", "pump-one -> two"
    )
    made = plumbnet.check(plumbnet.read_bytes(joined.encode()))
    whose = {one.name: one.heater for one in sheet(made, made.heaters[0]).contents}
    assert (whose["one"], whose["two"]) == ("one", "two")
    assert whose["pipe one -> far-one"] == whose["pipe pump-one -> two"] == "one and two"


def test_share_of_antifreeze_is_a_ratio_by_its_own_sign() -> None:
    glycol = "volume: 10 gal, setpoint: 180 degF, antifreeze: {glycol: propylene, share: 30 %}"
    item = sheet_of("street -> prv -> tee -> boiler", boiler=f"kind: boiler, {glycol}").inputs[-1]
    assert (item.symbol, item.dimension, item.value) == ("e_glycol", "ratio", 0.3)
