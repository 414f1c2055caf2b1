from drawing_board import sketch

from plumbnet.drawing.ink.spots import taken


def test_every_zone_in_trouble_has_its_area_and_tag() -> None:
    house = sketch(
        "street -> tee -> cv1 -> heater1 -> tap1.hot\ntee -> cv2 -> heater2 -> tap2.hot\nheater2.relief -> relief"
    )
    assert [(area.shading.tone, area.shading.tag) for area in house.composition.areas] == [
        ("sealed", "SEALED: heater1"),
        ("trapped", "TRAPPED: heater2"),
    ]


def test_tag_stands_neither_on_symbols_nor_on_words_nor_on_pipes() -> None:
    for runs in ("street -> cv -> heater -> tap.hot", "street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold"):
        composed = sketch(runs).composition
        left, top, right, bottom = composed.areas[0].tag_box
        for box in taken(composed.arrangement):
            assert min(right, box[2]) - max(left, box[0]) <= 0 or min(bottom, box[3]) - max(top, box[1]) <= 0
