from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts.all_facts import Facts

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def facts(runs: str) -> Facts:
    return plumbnet.check(system(runs)).facts


def test_zone_knows_its_limit_what_sets_it_and_its_lowest_fixture() -> None:
    (zone,) = (each for each in facts(CLOSED).zones if each.draw == "tap")
    assert (zone.limit.part, zone.limit.basis, zone.limit.way) == ("tap", "fixture", ())
    assert round(zone.limit.pressure_pa / PSI, 6) == 80.0
    assert zone.draw_pa == zone.static_pa == 60 * PSI


def test_place_above_its_limit_knows_the_heaters_that_bring_it_there() -> None:
    (place,) = facts(CLOSED).heaters[0].broken
    assert (place.part, place.way, place.history) == ("tap", (), (("heater",),))
    assert place.highest_pa > place.limit_pa
