from plumbnet.study.exercise.stock.stretch import Spot, Stretch, part_of


def test_stretch_knows_its_ends_and_what_stands_between() -> None:
    one = Stretch(("tee", "valve", "tap.hot"), Spot.HOT_TAP)
    assert (one.start, one.devices, one.end) == ("tee", ("valve",), "tap")
    assert part_of("heater/relief") == "heater/relief"


def test_stretch_is_written_with_its_pipe_where_one_is_known() -> None:
    assert Stretch(("tee", "tap.hot"), None).written() == "tee -> tap.hot"
    assert Stretch(("tee", "tap.hot"), None, "pex 3/4 in", "20 ft").written() == {
        "path": "tee -> tap.hot",
        "pipe": "pex 3/4 in",
        "length": "20 ft",
    }
