from drawing_board import sketch

from plumbnet.report.drawing.paint import tag
from plumbnet.report.drawing.remarks import Shaded
from plumbnet.report.drawing.words import taken
from plumbnet.rules.facts import Verdict


def test_tag_names_the_verdict_and_up_to_three_heaters() -> None:
    assert tag(Shaded(Verdict.SEALED, ("a",), frozenset())) == "SEALED: a"
    assert tag(Shaded(Verdict.TRAPPED, ("a", "b", "c", "d"), frozenset())) == "TRAPPED: a, b, c, ..."
    assert tag(Shaded(Verdict.TRAPPED, ("a" * 60,), frozenset())) == f"TRAPPED: {'a' * 27}..."


def test_every_zone_in_trouble_has_its_area_and_tag() -> None:
    house = sketch(
        "street -> tee -> cv1 -> heater1 -> tap1.hot\ntee -> cv2 -> heater2 -> tap2.hot\nheater2.relief -> relief"
    )
    assert [(area.zone.verdict.value, area.zone.heaters) for area in house.layout.areas] == [
        ("sealed", ("heater1",)),
        ("trapped", ("heater2",)),
    ]


def test_tag_stands_neither_on_symbols_nor_on_words_nor_on_pipes() -> None:
    for runs in ("street -> cv -> heater -> tap.hot", "street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold"):
        layout = sketch(runs).layout
        left, top, right, bottom = layout.areas[0].tag_box
        for box in taken(layout.placed):
            assert min(right, box[2]) - max(left, box[0]) <= 0 or min(bottom, box[3]) - max(top, box[1]) <= 0
