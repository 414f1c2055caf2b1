from plumbnet.drawing.lettering import LEADING, name_lines, shortened, size_of, width


def test_wider_words_take_more_room() -> None:
    assert 0 < width("iii") < width("mmm") < width("mmmm")
    assert width("mmm", 14.0) == 2 * width("mmm", 7.0)
    assert width("mmm", bold=True) > width("mmm")


def test_signs_the_font_lacks_take_a_square_each() -> None:
    assert width("水", 10.0) == 10.0
    assert width("水 m", 10.0) > 10.0 + width("m", 10.0)


def test_lines_stand_below_each_other() -> None:
    assert size_of(()) == (0.0, 0.0)
    assert size_of(("a", "bbb"), 10.0) == (width("bbb", 10.0), 2 * 10.0 * LEADING)


def test_no_sign_of_a_name_is_lost_in_folding() -> None:
    for name in ("split", "second-floor-cold-water-tee", "x" * 60, "heater-of-the-annex/relief", "a b c " * 9 + "d"):
        lines = name_lines(name)
        assert "".join(lines).replace(" ", "") == name.replace(" ", "")
        assert all(len(line) <= 18 for line in lines)


def test_name_is_broken_where_a_reader_would() -> None:
    assert name_lines("second-floor-cold-water-tee") == ("second-floor-cold-", "water-tee")
    assert name_lines("laboratory-heater/relief") == ("laboratory-heater/", "relief")


def test_what_does_not_print_is_made_visible() -> None:
    assert name_lines("a\x1bb") == ("a\\x1bb",)


def test_long_words_are_cut_and_odd_signs_made_visible() -> None:
    assert shortened("short") == "short"
    assert shortened("x" * 100) == "x" * 61 + "..."
    assert shortened("a\x1b[2J") == "a\\x1b[2J"
