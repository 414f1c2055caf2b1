from drafting import box_of
from drawing_board import sketch

from plumbnet.drawing.ink.areas import is_inside, way_legs, zone_boxes

HOUSE = "street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold\nheater.relief -> relief"


def covers(boxes: list[tuple[float, float, float, float]], x: float, y: float) -> bool:
    return any(left <= x <= right and top <= y <= bottom for left, top, right, bottom in boxes)


def test_zone_takes_in_its_pipes_parts_and_words_and_nothing_beyond_the_check() -> None:
    house = sketch(HOUSE)
    (zone,) = house.schematic.shadings
    boxes = zone_boxes(house.diagram, house.arrangement, zone.ports, {})
    for name in ("heater", "tap", "relief"):
        placement = house.placement(name)
        assert covers(boxes, placement.x, placement.y)
        assert covers(boxes, placement.words_box[0] + 1, placement.words_box[1] + 1)
    assert min(left for left, _, _, _ in boxes) > box_of(house.placement("cv"))[2]
    for name in ("cv", "street"):
        assert not covers(boxes, house.placement(name).x, house.placement(name).y)


def test_part_on_the_edge_of_a_zone_does_not_lie_in_it() -> None:
    house = sketch(HOUSE)
    ports = house.schematic.shadings[0].ports
    assert is_inside(house.diagram, "heater", ports)
    assert not is_inside(house.diagram, "cv", ports)


def test_name_of_a_tee_is_taken_in() -> None:
    house = sketch(HOUSE)
    far = (1000.0, 1000.0, 1020.0, 1010.0)
    boxes = zone_boxes(house.diagram, house.arrangement, house.schematic.shadings[0].ports, {"tee": far})
    assert covers(boxes, 1010.0, 1005.0)


def test_way_out_leads_from_the_heater_to_the_street_without_a_jump_between_pipes() -> None:
    house = sketch("street -> valve -> tee -> heater -> tap.hot\ntee -> tap.cold")
    (way,) = house.schematic.ways
    legs = way_legs(house.arrangement, way)
    assert (way[0], way[-1]) == ("heater", "street")
    assert len(legs) == len(way) - 1
    assert legs[0][0][0] > legs[-1][-1][0]
    for name, before, after in zip(way[1:-1], legs, legs[1:], strict=False):
        widest = 30.0 if name != "tee" else 0.1
        assert abs(before[-1][0] - after[0][0]) <= widest
