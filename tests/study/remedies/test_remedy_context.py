"""A report with its network: whose water comes to which tank, limits at a height, who is in trouble."""

import pytest
from conftest import PSI
from curing import HOUSE, RELIEVED, TANKED, house, scene


def test_heater_without_control_is_ailing_and_one_with_a_right_tank_is_not() -> None:
    assert scene(house()).is_ailing("heater")
    assert not scene(house(TANKED)).is_ailing("heater")


def test_waterlogged_tank_makes_a_controlled_heater_ailing() -> None:
    runs = f"{TANKED}\n tee -> tank2"
    layout = house(runs, tank2="state: waterlogged")
    assert scene(layout).heaters["heater"].verdict.value == "controlled"
    assert scene(layout).tank_errors("heater") == {"tank2"}
    assert scene(layout).is_ailing("heater")


def test_waterlogged_tank_of_another_house_is_none_of_a_heaters_business() -> None:
    runs = f"""{TANKED}
               street -> cv2 -> tee2 -> heater2 -> tap2.hot
               tee2 -> tank2"""
    layout = house(runs, heater2=RELIEVED, tank2="state: waterlogged")
    assert not scene(layout).is_ailing("heater")
    assert scene(layout).is_ailing("heater2")


def test_limit_reads_lower_at_a_tank_that_hangs_higher() -> None:
    found = scene(house(TANKED, tank="elevation: 10 m"))
    node = next(found.network.piping.nodes_of("tank"))
    assert found.limit_at_pa(found.heaters["heater"], node) == pytest.approx(80 * PSI - 98_066.5)
    assert found.head_pa("tank") == pytest.approx(98_066.5)


def test_limit_of_a_zone_is_that_of_its_lowest_fixture_and_rating() -> None:
    found = scene(house(HOUSE, tap="rating: 65 psi"))
    zone = found.zones_of("heater")[0]
    assert found.limit_pa(zone) == pytest.approx(65 * PSI)


def test_sizes_are_the_authors_where_he_gives_some() -> None:
    assert scene(house()).sizes_m3[0] == pytest.approx(2 * 0.003785411784)
