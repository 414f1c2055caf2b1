from dataclasses import replace

import pytest

from plumbnet.rules.facts.low_facts import LowFacts, Use

TAP = LowFacts("tap", Use.TAP, "tap", 6.0, 1e5, 1e5, None)


def test_parts_of_a_low_place_name_each_once() -> None:
    assert LowFacts("boiler", Use.HEATER, "attic", 6.0, 1e5, 1e5, None).parts == ("attic", "boiler")
    assert TAP.parts == ("tap",)


@pytest.mark.parametrize(("least_pa", "dry"), [(-1e4, True), (0.0, True), (0.9, True), (1.0, False)])
def test_place_is_dry_where_less_than_one_pascal_stands(least_pa: float, *, dry: bool) -> None:
    assert replace(TAP, least_pa=least_pa).is_dry is dry


@pytest.mark.parametrize(("least_pa", "lowest"), [(1e5 - 1.0, False), (1e5 - 1.1, True)])
def test_least_is_that_of_a_supply_at_its_lowest_where_more_stands_otherwise(least_pa: float, *, lowest: bool) -> None:
    assert replace(TAP, least_pa=least_pa).at_lowest is lowest
