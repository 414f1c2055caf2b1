from conftest import drawn


def test_water_that_communicates_freely_is_one_zone() -> None:
    # street - meter - valve - heater - tap: nothing between them but pipe
    d = drawn("street -> meter -> valve -> heater -> tap.hot")
    assert d.zone("street") == d.zone("tap.hot")
    assert list(d.network.zoning.crossings()) == []


def test_check_valve_parts_two_zones() -> None:
    d = drawn("street -> cv -> heater")
    assert d.zone("street") != d.zone("heater")
    forward, backward = d.network.zoning.crossings()
    assert (forward.near, forward.far) == (d.zone("street"), d.zone("heater"))
    assert forward.is_forward
    assert backward.way is None


def test_check_stuck_open_parts_nothing() -> None:
    d = drawn("street -> cv -> heater", cv="state: stuck_open")
    assert d.zone("street") == d.zone("heater")


def test_check_valve_with_an_open_pipe_round_it_is_no_gate_between_zones() -> None:
    #          +-- cv ---+
    # street - +         + - heater
    #          +-- pipe -+
    d = drawn("street -> tee1 -> cv -> tee2 -> heater\ntee1 -> tee2")
    assert d.zone("street") == d.zone("heater")
    assert list(d.network.zoning.cell_crossings()) == []


def test_check_valve_with_an_open_valve_round_it_counts_only_between_cells() -> None:
    #          +-- cv ----+
    # street - +          + - heater
    #          +-- valve -+
    d = drawn("street -> tee1 -> cv -> tee2 -> heater\ntee1 -> valve -> tee2")
    assert d.zone("street") == d.zone("heater")
    assert d.cell("street") != d.cell("heater")
    assert list(d.network.zoning.crossings()) == []
    assert [crossing.part for crossing in d.network.zoning.cell_crossings()] == ["cv", "cv"]


def test_valves_part_cells_and_not_zones() -> None:
    d = drawn("street -> valve1 -> heater -> valve2 -> tap.hot")
    assert d.zone("street") == d.zone("heater") == d.zone("tap.hot")
    assert len({d.cell("street"), d.cell("heater"), d.cell("tap.hot")}) == 3


def test_mixing_valve_with_checks_parts_hot_cold_and_mixed() -> None:
    d = drawn("street -> tee1 -> heater -> mixer.hot\ntee1 -> mixer.cold\nmixer.mixed -> tap.hot")
    assert d.zone("mixer.hot") == d.zone("mixer.cold")
    assert d.zone("mixer.mixed") != d.zone("mixer.hot")


def test_mixing_valve_without_checks_joins_what_it_mixes() -> None:
    d = drawn(
        "street -> cv -> heater -> mixer.hot\nmixer.mixed -> tap.hot\nstreet -> mixer.cold", mixer="checks: false"
    )
    assert d.zone("heater") == d.zone("street") == d.zone("tap.hot")


def test_two_pipes_between_the_same_two_parts_join_them_once() -> None:
    d = drawn("street -> tee1 -> cv -> tee2 -> heater\ntee2 -> tee3\ntee2 -> tee3")
    assert d.zone("tee3") == d.zone("heater")
    assert d.network.zoning.zone_count == 2


def test_outlets_belong_to_the_zone_of_their_port() -> None:
    d = drawn("street -> cv -> tee1 -> heater\ntee1 -> tank")
    assert {zone: [site.part for site in sites] for zone, sites in d.network.zoning.sites.items()} == {
        d.zone("street"): ["street"],
        d.zone("heater"): ["tank"],
    }


def test_only_the_way_back_through_a_reducer_is_that_of_a_bypass() -> None:
    d = drawn("street -> prv -> heater -> cv -> store -> valve -> tap.hot", prv="bypass: true", valve="state: shut")
    crossings = list(d.network.zoning.crossings())
    assert len(crossings) == 6
    assert [(one.part, one.is_forward) for one in crossings if one.is_bypass] == [("prv", False)]
