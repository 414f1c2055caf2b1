"""How far an answer holds: the numbers of a house, at what cost, and as worked out by hand."""

from pathlib import Path

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.contingency.outcome import WorldAnswer
from plumbnet.study.contingency.worlds import Worlds
from plumbnet.study.margins import layout_margins
from plumbnet.study.margins.layout_margins import MOST_MARGINS, margins_if_small, margins_of
from plumbnet.study.margins.margin import Margin, Margins
from plumbnet.study.margins.turning_search import STEPS

SYSTEMS = Path(__file__).parents[3] / "systems"
RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
RUNS = """street -> cv -> tee -> heater -> tap.hot
          tee -> tank"""


def house(**parts: str) -> Report:
    return plumbnet.check(system(RUNS, **{"heater": RELIEVED, "tank": "volume: 6 gal", **parts}))


def margin(found: Margins, part: str, field: str) -> Margin:
    return next(one for one in found.numbers if (one.number.part, one.number.field) == (part, field))


def ends(one: Margin) -> tuple[float | None, float | None]:
    """Between what it holds, SI."""
    return (None if one.below is None else one.below.holds_to), (None if one.above is None else one.above.holds_to)


def test_numbers_are_those_that_nobody_knows_exactly_in_the_order_of_the_file() -> None:
    found = margins_of(house())
    assert [f"{one.number.part} {one.number.field}" for one in found.numbers] == [
        "street pressure",
        "heater setpoint",
        "heater volume",
        "tap elevation",
        "tank precharge",
        "tank volume",
        "tank elevation",
    ]


def test_volume_at_which_the_tank_is_just_large_enough_is_that_of_the_requirement() -> None:
    """The least tank that the house is said to need without one, found by another way."""
    need = plumbnet.check(system("street -> cv -> tee -> heater -> tap.hot", heater=RELIEVED)).heaters[0].need
    assert need is not None
    assert need.tank_m3 is not None
    turn = margin(margins_of(house()), "tank", "volume").below
    assert turn is not None
    assert turn.turns_at <= need.tank_m3 * 1.001
    assert turn.holds_to >= need.tank_m3 * 0.999
    assert [(one.heater, one.after) for one in turn.outcome.turns] == [("heater", Verdict.TRAPPED)]


def test_street_turns_exactly_at_the_limit_where_nothing_stands_behind_a_check() -> None:
    report = plumbnet.check(system("street -> tee -> heater -> tap.hot", heater=RELIEVED))
    low, high = ends(margin(margins_of(report), "street", "pressure"))
    assert high == pytest.approx(80 * PSI, abs=60)
    assert low == pytest.approx(0, abs=2_000)


def test_other_heaters_do_not_count_where_one_is_named() -> None:
    runs = """street -> tee -> cv -> heater1 -> tap1.hot
              tee -> heater2 -> tap2.hot"""
    report = plumbnet.check(system(runs, heater1=RELIEVED, heater2=RELIEVED))
    assert margin(margins_of(report), "street", "pressure").above is not None
    assert margin(margins_of(report, heater="heater1"), "street", "pressure").above is None


def test_lowest_and_highest_of_a_street_are_moved_where_they_are_given() -> None:
    report = house(street="pressure: 60 psi, highest: 62 psi, lowest: 50 psi")
    fields = [one.number.field for one in margins_of(report).numbers if one.number.part == "street"]
    assert fields == ["highest", "lowest"]
    highest = margin(margins_of(report), "street", "highest")
    assert highest.below is None, "it cannot lie below the usual pressure, and down to that nothing turns"


@pytest.mark.parametrize("name", ["open-house", "house-with-check", "bakery-tank-right", "french-cylinder"])
def test_house_takes_at_most_sixty_checks(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[System] = []
    whole = Worlds.whole

    def counted(self: Worlds, layout: System) -> WorldAnswer:
        made.append(layout)
        return whole(self, layout)

    monkeypatch.setattr(Worlds, "whole", counted)
    found = margins_of(plumbnet.check(SYSTEMS / f"{name}.yaml"))
    assert found.checks == len(made) <= 60


def test_heights_that_cannot_matter_cost_two_checks_together() -> None:
    few = margins_of(plumbnet.check(system("street -> tee -> heater -> tap.hot", heater=RELIEVED)))
    taps = "\n".join(f"tee -> tap{number}.cold" for number in range(2, 20))
    many = margins_of(plumbnet.check(system(f"street -> tee -> heater -> tap.hot\n{taps}", heater=RELIEVED)))
    assert many.checks == few.checks
    assert all(one.is_free for one in many.numbers if one.number.field == "elevation")


def test_large_layout_is_left_to_those_who_ask() -> None:
    taps = "\n".join(f"tee -> tap{number}.cold" for number in range(2, MOST_MARGINS + 2))
    report = plumbnet.check(system(f"street -> tee -> heater -> tap.hot\n{taps}", heater=RELIEVED))
    assert margins_if_small(report) is None
    assert margins_if_small(house()) == margins_of(house())


def test_layout_whose_margins_take_long_is_left_to_those_who_ask(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(layout_margins, "MARGINS_BESIDE_PAGE", 500)
    assert margins_if_small(house()) is None
    assert margins_of(house()).checks > 2


def test_turn_lies_between_the_two_values_told() -> None:
    charge = margin(margins_of(house()), "tank", "precharge")
    for turn in (charge.below, charge.above):
        assert turn is not None
        assert 0 < abs(turn.turns_at - turn.holds_to) <= STEPS[charge.number.dimension]
        told = plumbnet.check(house().system.with_changes([set_charge(turn.holds_to)])).heaters[0].verdict
        assert told is Verdict.CONTROLLED
        beyond = plumbnet.check(house().system.with_changes([set_charge(turn.turns_at)])).heaters[0].verdict
        assert beyond is Verdict.TRAPPED


def set_charge(pressure_pa: float) -> plumbnet.Change:
    return plumbnet.Change.model_validate({"set": {"part": "tank", "precharge": f"{pressure_pa / 1000:.9f} kPa"}})
