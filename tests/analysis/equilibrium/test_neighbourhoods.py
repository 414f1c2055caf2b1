"""The neighbourhood of each zone of a layout."""

from conftest import Drawn, drawn

from plumbnet.analysis.equilibrium.neighbourhoods import Neighbourhoods
from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads

BIG = "volume: 20 gal"
ROW = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot\ntee1 -> tank1\ntee2 -> tank2"


def of(layout: Drawn) -> Neighbourhoods:
    return Neighbourhoods(layout.network, ZoneLoads(layout.network))


def test_neighbours_share_one_and_a_held_zone_has_its_own() -> None:
    layout = drawn(ROW, tank1=BIG, tank2=BIG)
    all_of = of(layout)
    first, second, street = (layout.zone(name) for name in ("heater1", "heater2", "street"))
    assert all_of.of(first) is all_of.of(second)
    assert list(all_of.of(street).zones) == [street]
    assert all_of.of(street) is all_of.of(street)
    assert all_of.of(street).growths_m3 == {}


def test_held_zone_that_a_heater_could_push_into_has_its_own_all_the_same() -> None:
    layout = drawn(
        "street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\nstreet2 -> tee2",
        street2="kind: main, pressure: 70 psi",
    )
    all_of = of(layout)
    heater, street = layout.zone("heater"), layout.zone("tee2")
    assert sorted(all_of.of(heater).zones) == sorted([heater, street])
    assert list(all_of.of(street).zones) == [street]


def test_street_between_two_houses_keeps_them_apart() -> None:
    layout = drawn("street -> cv1 -> heater1 -> tap1.hot\nstreet -> cv2 -> heater2 -> tap2.hot".replace(
        "street -> cv1", "street -> tee -> cv1").replace("street -> cv2", "tee -> cv2"))  # fmt: skip
    all_of = of(layout)
    first, second = layout.zone("heater1"), layout.zone("heater2")
    assert list(all_of.of(first).zones) == [first]
    assert list(all_of.of(second).zones) == [second]


def test_neighbourhood_around_a_zone_is_one_that_pushes_there() -> None:
    layout = drawn(ROW, tank1=BIG, tank2=BIG)
    all_of = of(layout)
    assert all_of.around(layout.zone("heater2")) is all_of.of(layout.zone("heater1"))
    assert all_of.around(layout.zone("street")) is None
    idle = drawn("street -> cv -> tee -> tankless -> tap.hot")
    assert of(idle).around(idle.zone("tee")) is None


def test_heater_that_cannot_rise_pushes_nowhere() -> None:
    layout = drawn("street -> tee -> heater -> tap.hot")
    assert of(layout).around(layout.zone("heater")) is None
