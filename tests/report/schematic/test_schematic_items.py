import pytest
from drawing_board import sketch

from plumbnet.drawing.symbols.symbol import SYMBOLS
from plumbnet.layout.model.part import KINDS


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_kind_has_a_symbol_of_its_own_or_a_box_of_its_name(kind: str) -> None:
    assert KINDS[kind].symbol in {*SYMBOLS, kind}
    assert [other for other in KINDS if KINDS[other].symbol == KINDS[kind].symbol] == [kind]


def test_open_tank_above_all_it_feeds_is_on_the_roof_and_one_below_is_not() -> None:
    assert sketch("cistern -> heater -> tap.hot").diagram.items["cistern"].is_on_roof
    low = sketch(
        "cistern -> heater -> tap.hot", tap="elevation: 200 ft", cistern="elevation: 300 ft", heater="elevation: 301 ft"
    )
    assert not low.diagram.items["cistern"].is_on_roof


def test_symbol_shows_how_a_part_stands() -> None:
    house = sketch(
        "street -> meter -> valve -> prv -> booster -> booster2 -> heater -> tap.hot\ntap.cold -> tank",
        meter="check: true",
        booster2="check: false",
        valve="state: shut",
        prv="bypass: true",
        tank="state: waterlogged",
        tap="crossover: true",
    )
    drawn = {name: item.symbol.name for name, item in house.diagram.items.items()}
    assert drawn["meter"] == "checked_meter"
    assert drawn["booster"] == "checked_booster_pump"
    assert drawn["booster2"] == "booster_pump"
    assert drawn["valve"] == "shut_valve"
    assert drawn["prv"] == "pressure_reducer_with_bypass"
    assert drawn["tank"] == "waterlogged_tank"
    assert drawn["tap"] == "fixture_with_crossover"


HOUSE = """
street -> cv -> tee1 -> heater -> tee2 -> tap1.hot
tee2 -> tee3 -> tap2.hot
tee3 -> tap3.hot
tee1 -> tap1.cold
tee1 -> valve -> tap4.cold
"""


def test_what_heats_supplies_stops_or_can_be_shut_is_not_quiet() -> None:
    house = sketch(HOUSE + "tee1 -> tank\ntee1 -> emitter1")
    assert {name for name, item in house.diagram.items.items() if item.is_quiet} == {
        "tee1",
        "tee2",
        "tee3",
        "tap1",
        "tap2",
        "tap3",
        "tap4",
        "emitter1",
    }
