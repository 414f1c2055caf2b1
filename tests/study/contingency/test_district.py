"""Districts: what hangs on a boundary, as a layout of its own."""

from conftest import drawn

from plumbnet.study.contingency.boundary import ROOT
from plumbnet.study.contingency.district import Districts

RUNS = """street -> tee -> valve -> tee2 -> heater -> tap.hot
          tee2 -> tap.cold
          tee -> heater2 -> tap2.hot
          tee -> tap3.cold
          tee -> tap4.cold
          tee -> tap5.cold"""


def districts() -> Districts:
    return Districts(drawn(RUNS, tap="elevation: 9 ft", tap2="elevation: -9 ft").network)


def test_smallest_district_comes_first() -> None:
    found = list(districts().around(["heater"]))
    assert [sorted(one.names) for one in found] == [
        ["heater", "tap", "tee2"],
        ["heater", "tap", "tee", "tee2", "valve"],
    ]


def test_district_holds_all_the_parts_asked_for() -> None:
    assert [one.boundary.tee for one in districts().around(["heater", "valve"])] == ["tee"]
    assert not list(districts().around(["heater", "heater2"]))
    assert [one.boundary.tee for one in districts().around(["heater", "tee2"])] == ["tee"]


def test_rest_of_the_layout_is_one_part() -> None:
    smallest = next(districts().around(["heater"]))
    assert list(smallest.system.parts) == [ROOT, "tee2", "heater", "tap"]
    assert [pipe.name for pipe in smallest.system.pipes] == [
        " -> tee2",
        "tee2 -> heater",
        "heater -> tap",
        "tee2 -> tap",
    ]


def test_same_district_is_laid_out_once() -> None:
    of = districts()
    assert next(of.around(["heater"])) is next(of.around(["tap"]))


def test_heaters_that_reach_the_boundary_are_known_on_both_sides() -> None:
    smallest = next(districts().around(["heater"]))
    assert (smallest.heaters, smallest.is_heated_inside, smallest.is_heated_beyond) == (
        ("heater", "heater2"),
        True,
        True,
    )


def test_district_of_most_of_the_layout_is_not_laid_out() -> None:
    assert not list(Districts(drawn("street -> tee -> valve -> heater -> tap.hot").network).around(["heater"]))
