from plumbnet.drawing.riser.stacking.riser_marks import BreakMark, CaptionMark, CardMark, FloorMark


def test_marks_cover_their_words() -> None:
    (level,) = FloorMark(0.0, 200.0, 100.0, "10 ft").boxes()
    assert level[1] < 95.0 < level[3] < 100.0
    (caption,) = CaptionMark(5.0, 50.0, ("rooms/1-6",)).boxes()
    assert caption[0] == 5.0
    assert caption[1] < 50.0 < caption[3]
    words, *gaps = BreakMark(0.0, 70.0, (30.0, 40.0), ("20 ft to 90 ft:", "8 levels alike")).boxes()
    assert words[2] > 40.0
    assert [(gap[0] + gap[2]) / 2 for gap in gaps] == [30.0, 40.0]


def test_names_on_a_card_stand_beside_the_count_where_there_is_room_else_below() -> None:
    wide, narrow = (CardMark((0.0, 0.0, right, 60.0), "A  × 12", ("rooms/101-120",)) for right in (200.0, 60.0))
    assert wide.first_name[1] == wide.at_count[1]
    assert narrow.first_name[1] > narrow.at_count[1] + 8.0
    assert wide.extent == (0.0, -4.0, 204.0, 60.0)
