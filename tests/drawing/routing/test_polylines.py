from drawing_board import sketch

from plumbnet.drawing.routing.polylines import Polyline


def test_what_two_pipes_of_a_tee_share_is_drawn_once() -> None:
    house = sketch("street -> tee -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot\ntee -> heater3 -> tap3.hot")
    routes = [route for route in house.arrangement.routes if route.link and route.link.start.part == "tee"]
    shared = [route for route in routes if route.before]
    assert shared
    for route in shared:
        assert route.before[-1] == route.points[0]
        assert route.before[0][0] == route.before[-1][0]


def test_turned_line_is_the_same_from_the_other_end() -> None:
    line = Polyline(((0, 0), (1, 0)), ((-1, 0), (0, 0)), ((1, 0), (2, 0)))
    assert line.turned == Polyline(((1, 0), (0, 0)), ((2, 0), (1, 0)), ((0, 0), (-1, 0)))
    assert line.turned.turned == line


def test_pipe_turns_round_a_device_that_it_leaves_on_the_far_side() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ncv -> tee\ncv.in -> valve -> tee")
    backward = next(name for name in ("cv", "valve") if house.footprint(name).backward)
    placement = house.placement(backward)
    routes = [
        route for route in house.arrangement.routes if route.link and backward in {end.part for end in route.link.ends}
    ]
    assert any(
        max(abs(y - placement.y) for _, y in route.points) > placement.item.symbol.height / 2 for route in routes
    )
