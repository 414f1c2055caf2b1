"""The order in which a reader follows the water."""

from conftest import system

from plumbnet.boards.reading_order import water_order


def test_parts_come_as_the_water_meets_them_each_stub_when_it_is_passed() -> None:
    house = system(
        """street -> meter -> tee1 -> tee2 -> heater -> tee3 -> tap1.hot
           tee1 -> tank
           tee2 -> tap1.cold
           tee3 -> tap2.hot"""
    )
    order = water_order(house)
    assert order[:6] == ("street", "meter", "tee1", "tank", "tee2", "heater")
    assert sorted(order) == sorted(house.parts)


def test_every_part_comes_once_in_loops_too_and_what_no_supply_reaches_comes_last() -> None:
    loop = system("street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> heater.return\nvalve -> tap2.cold")
    order = water_order(loop)
    assert sorted(order) == sorted(loop.parts)
    assert set(order[-2:]) == {"valve", "tap2"}
