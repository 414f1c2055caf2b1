from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.limit_facts import TapFacts

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def facts(runs: str) -> Facts:
    return plumbnet.check(system(runs)).facts


def test_tap_knows_what_stands_at_it_and_where_no_water_comes_nothing() -> None:
    (tap,) = facts(CLOSED).taps
    assert tap == TapFacts("tap", 60 * PSI)
    (hose,) = plumbnet.check(system(CLOSED, tap="outdoor: true")).facts.taps
    assert hose == TapFacts("tap", 60 * PSI, is_outdoors=True)
    (dry,) = facts("tap.cold -> cv -> street").taps
    assert dry == TapFacts("tap", None)


def test_place_above_its_limit_knows_the_heaters_that_bring_it_there() -> None:
    (place,) = facts(CLOSED).heaters[0].broken
    assert (place.part, place.way, place.history) == ("tap", (), (("heater",),))
    assert place.highest_pa > place.limit_pa
