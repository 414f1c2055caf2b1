from drawing_board import sketch

from plumbnet.layout.model.system import End
from plumbnet.report.schematic.schematic_remarks import stop_remarks, tag
from plumbnet.rules.facts.verdict_words import Verdict


def test_trapped_water_is_a_zone_from_the_check_on() -> None:
    house = sketch("street -> cv -> heater -> tap.hot\nheater.relief -> relief")
    (zone,) = house.schematic.shadings
    assert zone.tone == Verdict.TRAPPED
    assert zone.tag == "TRAPPED: heater"
    assert End("cv", "out") in zone.ports
    assert End("cv", "in") not in zone.ports
    assert stop_remarks(house.report) == {"cv"}
    assert house.schematic.ways == ()


def test_open_heater_shows_its_way_and_no_zone() -> None:
    house = sketch("street -> valve -> heater -> tap.hot")
    assert house.schematic.ways == (("heater", "valve", "street"),)
    assert house.schematic.shadings == ()


def test_controlled_heater_has_neither_zone_nor_way_but_what_stops_it() -> None:
    house = sketch("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="volume: 20 gal")
    assert (house.schematic.shadings, house.schematic.ways) == ((), ())
    assert stop_remarks(house.report) == {"cv"}


def test_sealed_water_is_a_zone_of_its_own_verdict() -> None:
    assert sketch("street -> cv -> heater -> tap.hot").schematic.shadings[0].tone == Verdict.SEALED


def test_heaters_in_one_zone_share_it() -> None:
    house = sketch("street -> cv -> tee1 -> heater1 -> tee2 -> tap.hot\ntee1 -> heater2 -> tee2")
    (zone,) = house.schematic.shadings
    assert zone.tag == "SEALED: heater1, heater2"


def test_water_on_both_sides_of_a_pump_without_a_check_is_one_zone() -> None:
    house = sketch("street -> cv -> heater1 -> booster -> heater2 -> booster2 -> tap.hot", booster="check: false")
    shut_in, behind = house.schematic.shadings[0], house.schematic.shadings[1:]
    assert shut_in.tag.endswith(": heater1, heater2")
    assert End("cv", "out") in shut_in.ports
    assert End("booster2", "in") in shut_in.ports
    assert End("booster2", "out") not in shut_in.ports
    assert behind == ()


def test_tag_names_the_verdict_and_up_to_three_heaters() -> None:
    assert tag(Verdict.SEALED, ("a",)) == "SEALED: a"
    assert tag(Verdict.TRAPPED, ("a", "b", "c", "d")) == "TRAPPED: a, b, c, ..."
    assert tag(Verdict.TRAPPED, ("a" * 60,)) == f"TRAPPED: {'a' * 27}..."
