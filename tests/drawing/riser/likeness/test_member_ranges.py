import pytest

from plumbnet.drawing.riser.likeness.member_ranges import called, natural, range_of


@pytest.mark.parametrize(
    ("names", "told"),
    [
        ([f"rooms/{n}" for n in range(101, 121)], "rooms/101-120"),
        ([f"rooms/{n}" for n in (101, 102, 105)], "rooms/101, 102, 105"),
        ([f"rooms/{n}" for n in (1, 2, 5, 9)], "rooms/1 ... 9"),
        (["a/1", "a/2", "b/1"], "a/1 ... b/1"),
        (["apt10b", "apt2a"], "apt2a ... apt10b"),
        (["plants/low", "plants/high"], "plants/high, low"),
        (["flat"], "flat"),
    ],
)
def test_names_are_told_as_a_range(names: list[str], told: str) -> None:
    assert range_of(names) == told
    assert range_of(names[::-1]) == told


def test_names_sort_as_people_count() -> None:
    assert sorted(["b10", "b9", "a", "10", "9"], key=natural) == ["9", "10", "a", "b9", "b10"]


def test_a_branch_is_called_by_its_instance_else_by_its_fixture() -> None:
    assert called(["rooms/7/hot", "rooms/7/basin"], ["rooms/7/basin"]) == "rooms/7"
    assert called(["h7", "basin7"], ["basin7"]) == "basin7"
    assert called(["h7", "v7"], []) == "v7"
