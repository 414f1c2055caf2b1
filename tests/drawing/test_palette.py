from plumbnet.drawing.palette import LineStyle, Shade


def test_line_and_outline_are_solid_unless_a_dash_is_asked_for() -> None:
    assert LineStyle("#000000", 1.5).dash == ()
    assert (Shade("#ffffff", "#000000", "").width, Shade("#ffffff", "#000000", "").dash) == (1.0, ())
