"""The cold piping of a zone: what every way to its heaters passes."""

from conftest import drawn

from plumbnet.network.loops.cold_header import ColdHeader
from plumbnet.network.network import Network


def header(network: Network, heater: str = "heater") -> ColdHeader:
    heated = next(one for one in network.heated if one.name == heater)
    return network.cold_headers.of(network.zoning.zone_of[heated.inlet])


def shared(runs: str, *heaters: str) -> list[str]:
    """The parts that all cold water of heaters passes, each once."""
    network = drawn(runs).network
    inlets = [one.inlet for one in network.heated if one.name in heaters]
    nodes = header(network, heaters[0]).shared(inlets)
    return list(dict.fromkeys(network.piping.ports[node].part for node in nodes))


def test_way_begins_behind_the_last_device_and_ends_at_the_heater() -> None:
    assert shared("street -> tee1 -> cv -> tee -> heater -> tap.hot", "heater") == ["cv", "tee", "heater"]


def test_two_heaters_share_what_lies_before_their_branches() -> None:
    runs = "street -> cv -> tee1 -> tee -> heater -> tee3 -> tap.hot\ntee -> heater2 -> tee3"
    assert shared(runs, "heater", "heater2") == ["cv", "tee1", "tee"]


def test_ring_is_left_out_for_no_point_of_it_is_passed_by_all() -> None:
    runs = "street -> cv -> tee1 -> tee2 -> tee3 -> heater -> tap.hot\ntee1 -> tee4 -> tee3"
    assert shared(runs, "heater") == ["cv", "tee1", "tee3", "heater"]


def test_circulation_is_no_second_way_in() -> None:
    runs = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> cv2 -> tee"
    assert shared(runs, "heater") == ["cv", "tee", "heater"]


def test_two_supplies_share_only_what_lies_behind_both() -> None:
    runs = "street -> cv -> tee1 -> tee -> heater -> tap.hot\nstreet2 -> cv2 -> tee2 -> tee"
    assert shared(runs, "heater") == ["tee", "heater"]


def test_zone_behind_a_shut_valve_is_entered_there() -> None:
    network = drawn("street -> cv -> valve -> tee -> heater -> tap.hot", valve="state: shut").network
    nodes = header(network).shared([network.heated[0].inlet])
    assert network.piping.ports[nodes[0]].part == "valve"


def test_zone_that_nothing_feeds_has_no_header() -> None:
    network = drawn("street -> tap.cold\ntee -> heater -> tap2.hot").network
    assert header(network).shared([network.heated[0].inlet]) == ()


def test_place_that_all_drawn_cold_water_passes_is_told_from_one_that_only_some_does() -> None:
    network = drawn("street -> cv -> tee1 -> tee -> heater -> tap.hot\ntee1 -> tap.cold\ntee -> tap2.cold").network
    node_of = {end.part: node for node, end in enumerate(network.piping.ports)}
    assert header(network).parts_from_all(node_of["tee1"])
    assert not header(network).parts_from_all(node_of["tee"])


def test_where_nobody_draws_cold_water_nothing_parts_all_of_it() -> None:
    network = drawn("street -> cv -> tee -> heater -> tap.hot").network
    node_of = {end.part: node for node, end in enumerate(network.piping.ports)}
    assert not header(network).parts_from_all(node_of["tee"])
