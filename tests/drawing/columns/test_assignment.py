from drawing_board import sketch


def test_supply_stands_left_heat_in_the_middle_and_taps_right() -> None:
    house = sketch("street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold")
    assert house.column("street") == 0
    assert house.column("street") < house.column("meter") < house.column("tee") < house.column("heater")
    assert house.column("tap") == max(house.grid.column_of)


def test_cold_tee_of_a_tap_stands_under_its_hot_tee() -> None:
    house = sketch(
        "street -> tee1 -> valve1 -> valve2 -> heater -> tee2 -> tee3 -> tap3.hot\ntee2 -> tap2.hot\n"
        "tee1 -> tee4 -> tee5 -> tap3.cold\ntee4 -> tap2.cold"
    )
    assert house.column("tee2") == house.column("tee4")
    assert house.column("tee3") == house.column("tee5")


def test_every_arc_leads_to_the_right_by_at_least_its_least() -> None:
    house = sketch("street -> tee1 -> heater -> tee2 -> tap1.hot\ntee2 -> tap2.hot\ntee2 -> pump -> tee1")
    for arc in house.graph.arcs:
        assert house.grid.column_of[arc.head] - house.grid.column_of[arc.tail] >= arc.least
