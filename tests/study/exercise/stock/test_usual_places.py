import pytest

from plumbnet.layout.model.part import KINDS
from plumbnet.study.exercise.stock.stretch import Spot
from plumbnet.study.exercise.stock.usual_places import CHECKS, PLACES, is_usual


def test_every_kind_named_is_one_that_there_is() -> None:
    assert set(PLACES) | CHECKS <= set(KINDS)


@pytest.mark.parametrize(
    ("place", "kinds"),
    [
        (Spot.SERVICE, ["meter", "valve", "tee", "pressure_reducer", "check_valve", "softener"]),
        (Spot.SERVICE, ["valve", "meter", "tee", "valve"]),
        (Spot.YARD, ["valve", "meter", "dual_check"]),
        (Spot.FEED, ["valve", "check_valve", "tee", "tee", "valve"]),
        (Spot.RETURN, ["circulator", "check_valve", "valve"]),
        (Spot.TAP, []),
        (Spot.HOT, ["check_valve", "valve"]),
        (Spot.CIRCUIT, ["circulator", "check_valve", "valve", "tee"]),
    ],
)
def test_what_is_often_built_is_usual(place: Spot, kinds: list[str]) -> None:
    assert is_usual(place, kinds)


@pytest.mark.parametrize(
    ("place", "kinds"),
    [
        (Spot.SERVICE, ["valve", "tee", "meter"]),
        (Spot.SERVICE, ["meter", "valve", "softener", "pressure_reducer"]),
        (Spot.SERVICE, ["meter", "valve", "check_valve", "dual_check"]),
        (Spot.FEED, ["valve", "valve"]),
        (Spot.FEED, ["check_valve", "valve", "check_valve"]),
        (Spot.YARD, ["check_valve", "meter"]),
        (Spot.RETURN, ["check_valve", "circulator"]),
        (Spot.TAP, ["valve", "check_valve"]),
        (Spot.HOT, ["check_valve", "check_valve"]),
        (Spot.CIRCUIT, ["check_valve", "circulator"]),
    ],
)
def test_what_nobody_builds_is_not(place: Spot, kinds: list[str]) -> None:
    assert not is_usual(place, kinds)
