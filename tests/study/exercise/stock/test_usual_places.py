import pytest

from plumbnet.layout.model.part import KINDS
from plumbnet.study.exercise.stock.stretch import Place
from plumbnet.study.exercise.stock.usual_places import CHECKS, PLACES, is_usual


def test_every_kind_named_is_one_that_there_is() -> None:
    assert set(PLACES) | CHECKS <= set(KINDS)


@pytest.mark.parametrize(
    ("place", "kinds"),
    [
        (Place.SERVICE, ["meter", "valve", "tee", "pressure_reducer", "check_valve", "softener"]),
        (Place.SERVICE, ["valve", "meter", "tee", "valve"]),
        (Place.YARD, ["valve", "meter", "dual_check"]),
        (Place.FEED, ["valve", "check_valve", "tee", "tee", "valve"]),
        (Place.RETURN, ["circulator", "check_valve", "valve"]),
        (Place.TAP, []),
    ],
)
def test_what_is_often_built_is_usual(place: Place, kinds: list[str]) -> None:
    assert is_usual(place, kinds)


@pytest.mark.parametrize(
    ("place", "kinds"),
    [
        (Place.SERVICE, ["valve", "tee", "meter"]),
        (Place.SERVICE, ["meter", "valve", "softener", "pressure_reducer"]),
        (Place.SERVICE, ["meter", "valve", "check_valve", "dual_check"]),
        (Place.FEED, ["valve", "valve"]),
        (Place.FEED, ["check_valve", "valve", "check_valve"]),
        (Place.YARD, ["check_valve", "meter"]),
        (Place.RETURN, ["check_valve", "circulator"]),
        (Place.TAP, ["valve", "check_valve"]),
    ],
)
def test_what_nobody_builds_is_not(place: Place, kinds: list[str]) -> None:
    assert not is_usual(place, kinds)
