"""Where a layout can be thought cut."""

import pytest
from conftest import PSI, drawn

from plumbnet.study.contingency.boundary import Boundaries


def tees(part: str, runs: str, **parts: str) -> list[tuple[str, bool]]:
    """The boundaries above a part, nearest first, and whether a main holds each."""
    boundaries = Boundaries(drawn(runs, **parts).network)
    return [(one.tee, one.beyond.takes_back) for one in boundaries.above(part)]


HELD = """street -> tee -> valve -> tee2 -> meter -> tee3 -> heater -> tap.hot
          tee -> tap2.cold
          tee2 -> heater2 -> tap3.hot"""


def test_tee_that_a_main_holds_parts_what_hangs_on_it() -> None:
    assert tees("heater", HELD) == [("tee3", True), ("tee2", True), ("tee", True)]
    assert tees("valve", HELD) == [("tee", True)]
    assert not tees("street", HELD)
    assert not tees("tee", HELD)


def test_behind_a_check_no_main_holds_a_tee_that_heated_water_reaches() -> None:
    assert tees("heater", HELD, meter="check: true") == [("tee2", True), ("tee", True)]


def test_tee_that_no_heated_water_reaches_is_quiet() -> None:
    runs = """street -> cv -> tee -> cv2 -> heater -> tap.hot
              tee -> cv3 -> heater2 -> tap2.hot"""
    assert tees("heater", runs) == [("tee", False)]
    assert not tees("heater", runs.replace("cv3 -> ", ""))


def test_tee_with_a_way_round_it_is_no_boundary() -> None:
    runs = """street -> tee -> tee2 -> heater -> tap.hot
              tee -> valve -> tee3 -> tap2.cold
              tee2 -> tee3"""
    assert tees("heater", runs) == [("tee2", True), ("tee", True)]
    assert tees("tap2", runs) == [("tee3", True), ("tee", True)]
    assert tees("valve", runs) == [("tee", True)]


@pytest.mark.parametrize(
    ("runs", "parts"),
    [
        ("street -> tee -> heater -> tap.hot\n tee -> relief", {}),
        ("street -> tee -> valve -> relief\n tee -> heater", {"relief": "pressure: 50 psi"}),
        ("street -> tee -> heater -> tap.hot\n tee -> valve -> spill", {}),
        ("street -> tee -> heater -> tap.hot\n tee -> vent", {}),
        ("street -> tee -> heater -> tap.hot\n tee -> tap2.cold", {"tap2": "drawing: true"}),
        ("street -> tee -> heater -> tap.hot", {"tap": "elevation: 300 ft"}),
        ("street -> valve -> tee -> heater -> tap.hot", {"valve": "state: shut"}),
        (
            "street -> tee -> heater -> tap.hot\n tee -> valve -> street2",
            {"valve": "state: shut", "street2": "kind: main, pressure: 60 psi, temperature: 40 degF"},
        ),
    ],
    ids=["relief beside", "relief weeps", "spill", "vent", "running tap", "too high", "cut off", "colder main"],
)
def test_what_is_felt_on_both_sides_leaves_no_boundary(runs: str, parts: dict[str, str]) -> None:
    assert not tees("heater", runs, **parts)


def test_main_that_only_a_crossover_joins_holds_nothing() -> None:
    runs = """street -> tee -> cv -> tee2 -> valve -> heater -> tap.hot
              tee2 -> tap2.hot
              tee -> tap2.cold"""
    assert tees("heater", runs, tap2="crossover: true") == [("tee", True)]
    assert tees("heater", runs.replace("cv", "meter"), tap2="crossover: true") == [("tee2", True), ("tee", True)]


def test_inside_is_what_hangs_on_the_tee_on_the_side_of_the_part() -> None:
    boundaries = Boundaries(drawn(HELD).network)
    nearest, *_ = boundaries.above("meter")
    assert boundaries.inside(nearest, "meter") == {"tee2", "meter", "tee3", "heater", "tap"}
    assert boundaries.inside(nearest, "heater2") == {"tee2", "heater2", "tap3"}


def test_what_lies_beyond_has_the_pressure_and_the_cold_of_the_boundary() -> None:
    runs = """well -> cv -> tee -> cv2 -> heater -> tap.hot
              tee -> cv3 -> heater2 -> tap2.hot"""
    (boundary,) = Boundaries(drawn(runs, well="elevation: 10 ft, temperature: 45 degF").network).above("heater")
    source = boundary.beyond.source()
    head = 10 * 0.3048 * 9806.65
    assert source.pressure_pa == pytest.approx(50 * PSI + head)
    assert source.cut_in_pa == pytest.approx(30 * PSI + head)
    assert source.temperature_k == pytest.approx(280.372, abs=1e-3)
    assert not list(boundary.beyond.outlets())
