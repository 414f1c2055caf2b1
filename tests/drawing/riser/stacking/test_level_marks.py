from tall_buildings import tall, tower

from plumbnet.drawing.riser.stacking.detail_places import place_details
from plumbnet.drawing.riser.stacking.level_marks import level_words, marks_of
from plumbnet.drawing.riser.stacking.riser_marks import CaptionMark, CardMark, FloorMark
from plumbnet.drawing.riser.stacking.shaft_places import put_side_by_side


def marks(shafts: int) -> list[object]:
    setting = tall(tower(storeys=6, shafts=shafts)).setting
    places = put_side_by_side(setting)
    place_details(setting, places)
    return list(marks_of(setting, places))


def test_there_is_a_line_to_each_level_a_card_to_each_detail_and_a_caption_to_each_shaft() -> None:
    found = marks(2)
    assert sum(isinstance(mark, FloorMark) for mark in found) == 7
    assert [mark.count for mark in found if isinstance(mark, CardMark)] == ["A  × 12"]
    assert [mark.lines for mark in found if isinstance(mark, CaptionMark)] == [
        ("flat1a ... flat6a",),
        ("flat1b ... flat6b",),
    ]


def test_a_folded_shaft_is_drawn_as_a_sheaf_of_cards() -> None:
    cards = [mark for mark in marks(3) if isinstance(mark, CardMark)]
    assert [card.count for card in cards] == ["A  × 18", "× 3 shafts alike"]
    assert cards[1].names == ("flat1a ... flat6c",)


def test_heights_are_in_the_units_of_the_file() -> None:
    assert level_words(tall(tower(storeys=6)).structure, 3) == "30 ft"
