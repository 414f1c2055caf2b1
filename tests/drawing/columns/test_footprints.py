from drawing_board import Sketch, sketch

from plumbnet.drawing.columns.footprints import Footprint, Footprints, Tip


def tips(house: Sketch, name: str) -> dict[str, tuple[float, float]]:
    """Where the pipe to each neighbour joins a part."""
    footprint = house.footprint(name)
    found = {}
    for (number, is_head), point in footprint.tips.items():
        arc = house.graph.arcs[number]
        item = house.graph.stations[arc.tail if is_head else arc.head].item
        found["bend" if item is None else item.name] = point
    return found


def test_check_on_a_return_is_drawn_the_other_way_round() -> None:
    house = sketch("street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> cv -> tee1")
    assert house.footprint("cv").is_mirrored
    assert not house.footprint("heater").is_mirrored
    assert tips(house, "cv")["pump"][0] > 0 > tips(house, "cv")["tee1"][0]


def test_pipe_that_leaves_on_the_far_side_is_known() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ncv -> tee\ncv.in -> valve -> tee")
    backward = [name for name in ("cv", "valve") if house.footprint(name).backward]
    assert backward
    assert isinstance(next(iter(house.footprint(backward[0]).backward)), Tip)


def test_vessel_is_joined_on_the_side_its_pipe_comes_from() -> None:
    house = sketch("street -> heater -> tee -> tap.hot\ntee -> pump -> heater.return")
    joined = tips(house, "heater")
    assert joined["street"][0] < 0 < joined["tee"][0]
    assert joined["pump"][0] > 0


def test_hot_and_cold_of_a_tap_change_places_where_their_pipes_would_cross() -> None:
    house = sketch(
        "street -> tee1 -> heater -> tee2 -> tap.hot\ntee1 -> tap.cold\ntee2 -> mixer.hot\ntee1 -> mixer.cold"
    )
    upside_down = [list(reversed(column)) for column in house.columns]
    turned = Footprints(house.grid, upside_down, house.diagram, house.stacks).all()
    for name in ("tap", "mixer"):
        station = house.graph.pieces[name][0]

        def heights(footprint: Footprint) -> list[float]:
            return [y for _, (_, y) in sorted(footprint.tips.items())]

        assert heights(house.footprints[station]) == [-y for y in heights(turned[station])]
        assert heights(house.footprints[station]) != heights(turned[station])
    assert turned[house.graph.pieces["mixer"][0]].is_turned != house.footprint("mixer").is_turned
    assert not turned[house.graph.pieces["tap"][0]].is_turned


def test_ports_of_a_device_are_spread_over_its_sides() -> None:
    ports = "{kind: device, ports: [a, b, c, d], passages: [{free: [a, b]}, {free: [a, c]}, {free: [a, d]}]}"
    house = sketch("street -> box1.a\nbox1.b -> tap1.cold\nbox1.c -> tap2.cold\nbox1.d -> tap3.cold", box1=ports[1:-1])
    points = list(house.footprint("box1").tips.values())
    assert len(set(points)) == 4
    assert sorted(x < 0 for x, _ in points) == [False, False, False, True]


def test_words_stand_beside_an_end_and_below_what_has_pipes_on_both_sides() -> None:
    house = sketch("street -> meter -> tap.cold")
    assert [house.footprint(name).words_at_side for name in ("street", "meter", "tap")] == [-1, 0, 1]


def test_ring_takes_room() -> None:
    rooms = [sketch(f"street -> {name} -> heater -> tap.hot").footprint(name).room.left for name in ("cv", "meter")]
    assert rooms[0] > rooms[1]


def test_emitter_is_piped_from_one_side_where_its_pipes_come_from_there() -> None:
    house = sketch("street -> cv -> tee1\nboiler -> tee1 -> pump -> emitter -> boiler")
    xs = {x for x, _ in house.footprint("emitter").tips.values()}
    ys = {y for _, y in house.footprint("emitter").tips.values()}
    assert len(xs) == 1
    assert len(ys) == 2


def test_relief_valve_at_the_end_of_a_run_is_joined_below_its_foot() -> None:
    house = sketch("street -> heater -> relief")
    ((_, y),) = house.footprint("relief").tips.values()
    assert y > house.diagram.items["relief"].symbol.height / 2
