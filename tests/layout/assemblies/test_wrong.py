"""Names that may be meant."""

from plumbnet.layout.assemblies.wrong import Wrong, cut_short, meant


def test_the_nearest_name_is_offered_and_nothing_far() -> None:
    assert meant("tapp", ["tap", "heater"]) == "; did you mean tap?"
    assert meant("171", ["101", "110"]) == "; did you mean 110?"
    assert not meant("spaceship", ["tap", "tee"])


def test_a_long_word_is_cut_and_not_compared() -> None:
    assert len(cut_short("x" * 500)) == 60
    assert not meant("x" * 500, ["x" * 499])


def test_a_mistake_keeps_where_it_is() -> None:
    assert Wrong("no", ("times",)).path == ("times",)
