"""Where one tank could serve several heaters."""

import pytest
from conftest import PSI
from curing import HOUSE, RELIEVED, house, scene

from plumbnet.layout.model.system import System
from plumbnet.study.remedies.fewest_tanks.tank_sites import TankSite, TankSites

HEADER = """street -> cv -> tee -> valve -> heater -> tee3 -> tap.hot
            tee -> valve2 -> heater2 -> tee3"""
IN_A_ROW = """street -> cv -> tee -> heater -> tap.hot
              tee -> cv2 -> tee2 -> heater2 -> tap2.hot"""


def sites(layout: System) -> list[TankSite]:
    return TankSites(scene(layout)).all()


def test_tank_for_two_heaters_hangs_on_their_common_header() -> None:
    (site,) = sites(house(HEADER, heater2=RELIEVED))
    assert site.joint.at == "tee"
    assert site.serves == {"heater", "heater2"}


def test_tank_behind_the_next_check_serves_the_heater_before_it_too() -> None:
    found = sites(house(IN_A_ROW, heater2=RELIEVED))
    assert [(site.joint.at, sorted(site.serves)) for site in found] == [
        ("tee2", ["heater", "heater2"]),
        ("tee", ["heater"]),
    ]


def test_no_site_lies_upstream_of_the_last_check_or_on_the_hot_side() -> None:
    layout = house("street -> tee -> cv -> heater -> tee2 -> tap.hot\n tee -> tap.cold")
    (where,) = (site.joint.where for site in sites(layout))
    assert where.startswith("at a new tee ")
    assert where.endswith("in the pipe from cv to heater")


def test_site_where_the_static_pressure_leaves_no_room_is_none() -> None:
    assert sites(house(street="pressure: 85 psi")) == []


def test_sealed_heater_needs_more_than_a_tank() -> None:
    assert sites(house(heater="input: 40000 Btu/h")) == []


def test_duty_counts_water_that_two_heaters_share_once() -> None:
    layout = house(HEADER, heater2=RELIEVED)
    (site,) = sites(layout)
    search = TankSites(scene(layout))
    both, one = search.duty(site, site.serves), search.duty(site, frozenset({"heater"}))
    assert both.takes_m3 == pytest.approx(one.takes_m3)
    assert both.takes_m3 == pytest.approx(2 * search.scene.heaters["heater"].expansion_m3)


def test_duty_ends_at_the_lowest_limit_of_those_it_serves() -> None:
    layout = house(IN_A_ROW, heater2=RELIEVED, tap="rating: 70 psi")
    site = sites(layout)[0]
    assert TankSites(scene(layout)).duty(site, site.serves).limit_pa == pytest.approx(70 * PSI)


def test_heater_that_is_controlled_needs_no_site() -> None:
    assert sites(house(f"{HOUSE}\n tee -> tank")) == []
