"""The pressures of a column, lowest first, with the words beside them."""

from conftest import PSI, system

import plumbnet
from plumbnet.physics.vessels.defaults import BREAKS_PA
from plumbnet.report.charts.ladder_levels import MOST_OUTLETS, LevelMark, PressureLevel, levels, proof
from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.margins.street_band import street_bands

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def column(runs: str, **parts: str) -> list[PressureLevel]:
    report = plumbnet.check(system(runs, **parts))
    return levels(report.facts, report.heaters[0])


def test_trapped_heater_has_static_limit_and_relief() -> None:
    found = column(HOUSE, heater="relief: {pressure: 150 psi}")
    assert [(each.mark, each.words) for each in found] == [
        (LevelMark.STATIC, "static 60 psi"),
        (LevelMark.LIMIT, "limit 80 psi (fixture tap)"),
        (LevelMark.RELIEF, "heater/relief 150 psi"),
    ]
    assert [round(each.pressure_pa / PSI) for each in found] == [60, 80, 150]


def test_controlled_heater_says_where_it_settles() -> None:
    found = column(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal")
    assert [each.mark for each in found] == [LevelMark.STATIC, LevelMark.OUTLET, LevelMark.SETTLED, LevelMark.LIMIT]


def test_heater_that_no_supply_reaches_has_no_static() -> None:
    found = column("heater -> tap.hot\nstreet -> tap2.cold")
    assert LevelMark.STATIC not in {each.mark for each in found}


def test_outlets_of_one_pressure_are_named_together_and_safety_valves_by_themselves() -> None:
    spills = f"{HOUSE}\ntee -> spill1\ntee -> spill2\ntee -> relief"
    words = [each.words for each in column(spills, relief="pressure: 100 psi")]
    assert "spill1 and spill2 100 psi" in words
    assert "relief 100 psi" in words


def test_many_outlets_are_counted() -> None:
    many = "\n".join(f"tee -> spill{number}" for number in range(1, 11))
    fields = {f"spill{number}": f"pressure: {90 + number} psi" for number in range(1, 11)}
    words = [each.words for each in column(f"{HOUSE}\n{many}", **fields)]
    assert sum("spill" in text for text in words) == MOST_OUTLETS
    assert "spill6 96 psi; 4 more above" in words


def test_heaters_are_tested_to_300_psi() -> None:
    facts = plumbnet.check(system(HOUSE)).facts
    assert proof(facts) == PressureLevel(
        BREAKS_PA, LevelMark.TESTED, "300 psi: heaters are tested to this (common practice)"
    )


def test_band_of_the_street_is_told_beside_the_static_pressure() -> None:
    report = plumbnet.check(system("street -> heater -> tap.hot", heater="relief: {pressure: 150 psi}"))
    (band,) = street_bands(report, margins_of(report).numbers)
    words = [level.words for level in levels(report.facts, report.heaters[0], band)]
    assert words[0].startswith("static 60 psi (nothing turns from 0.")
    assert words[0].endswith(" to 80 psi)")
