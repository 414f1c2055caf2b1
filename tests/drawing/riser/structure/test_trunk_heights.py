import pytest
from drawing_board import sketch

from plumbnet.drawing.riser.structure.trunk_heights import is_in_pipe, trunk_heights
from plumbnet.report.schematic.building_plan import building_facts

#   street - heater - tee1 -+- tee2 - tee3 - tap3 (9 m)      tee1 is a header: two risers part from it
#                           |    +- tap2 (6 m)   +- tap4 (12 m)
#                           +- tee5 - tee6 - tap6 (9 m)
#                                +- tap5 (6 m)   +- tap7 (12 m)
RUNS = """
street -> heater -> tee1 -> tee2 -> tee3 -> tap3.hot
tee2 -> tap2.hot
tee3 -> tap4.hot
tee1 -> tee5 -> tee6 -> tap6.hot
tee5 -> tap5.hot
tee6 -> tap7.hot
"""


def test_a_joint_stands_as_low_as_what_it_feeds_and_a_header_stays() -> None:
    house = sketch(RUNS)
    known = {"tap2": 6.0, "tap3": 9.0, "tap4": 12.0, "tap5": 6.0, "tap6": 9.0, "tap7": 12.0}
    assert trunk_heights(house.diagram, building_facts(house.report), known) == {
        "tee2": 6.0, "tee3": 9.0, "tee5": 6.0, "tee6": 9.0,
    }  # fmt: skip


def test_fed_from_above_it_stands_as_high_as_what_it_feeds() -> None:
    house = sketch(RUNS)
    known = {"heater": 30.0, "tap2": 6.0, "tap3": 9.0, "tap4": 12.0}
    found = trunk_heights(house.diagram, building_facts(house.report), known)
    assert found["tee3"] == pytest.approx(12.0)


def test_fixtures_stand_in_no_pipe() -> None:
    house = sketch("street -> valve -> tee -> tap.cold")
    assert [name for name in house.diagram.items if is_in_pipe(house.diagram, name)] == ["valve", "tee"]
