"""Names told in ranges: what they read like, and that a range stands for exactly its names."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.report.prose.name_ranges import name_ranges, names_in_short


def words(names: list[str]) -> list[str]:
    return [one.words for one in name_ranges(names)]


@pytest.mark.parametrize(
    ("names", "told"),
    [
        ([f"rooms/{n}/mixer" for n in range(1, 201)], ["rooms 1 to 200/mixer"]),
        (["rooms/1", "rooms/2", "rooms/3"], ["rooms 1 to 3"]),
        (["heaters/1/relief", "heaters/2/relief"], ["heaters 1 and 2/relief"]),
        (["north-heater-1", "north-heater-2"], ["north-heater-1 and 2"]),
        ([f"r{n}-cold" for n in range(0, 200, 2)], ["r0-cold to r198-cold in steps of 2"]),
        (["flats/high/tap", "flats/low/tap"], ["flats high and low/tap"]),
        (
            [f"plants/{p}/risers/{r}/rooms/{n}/hot" for p in "ab" for r in range(1, 5) for n in range(1, 8)],
            ["plants a and b/risers 1 to 4/rooms 1 to 7/hot"],
        ),
        (["rooms/098", "rooms/099", "rooms/100", "rooms/7"], ["rooms 7 and 098 to 100"]),
        (["rooms/1/hot", "rooms/1/cold", "rooms/2/hot"], ["rooms 1 and 2/hot", "rooms/1/cold"]),
        (["a/relief", "b/relief"], ["a/relief", "b/relief"]),
        (["r1-tap-1", "r1-tap-2", "r2-tap-1", "r2-tap-2"], ["r(1 and 2)-tap-(1 and 2)"]),
        ([f"r{n}" for n in (1, 4, 9, 13, 14, 19, 23, 27, 38, 45, 99)], ["r1, 4, 9, 13, 14 and 6 more"]),
        (["9" * 5000, "stop", "stop", ""], ["9" * 5000, "stop", ""]),
    ],
    ids=lambda value: value[0][:20],
)
def test_names_read_as_one_would_say_them(names: list[str], told: list[str]) -> None:
    assert words(names) == told


def test_beyond_some_ranges_names_are_counted() -> None:
    names = ["street", "meter", "stop", "rpz", "tank", "vent", *(f"rooms/{n}/tap" for n in range(1, 31)), "well"]
    assert names_in_short(names) == "street, meter, stop, rpz, tank, vent and 31 more"
    assert names_in_short(names, most=7).endswith("vent, rooms 1 to 30/tap and well")
    assert names_in_short([]) == "nothing"


_NAME = st.lists(st.sampled_from(["rooms", "a", "b", "1", "2", "3", "04", "r5-x", "r6-x", ""]), min_size=1, max_size=5)


@given(st.lists(_NAME.map("/".join), max_size=40))
def test_every_name_stands_in_one_range_and_no_other_does(names: list[str]) -> None:
    found = name_ranges(names)
    told = [name for one in found for name in one.names]
    assert sorted(told) == sorted(set(names))
    assert len({one.words for one in found}) == len(found), "two ranges read alike"


@given(st.sets(st.tuples(st.integers(0, 30), st.integers(0, 30)), max_size=60))
def test_what_a_range_says_is_what_it_stands_for(pairs: set[tuple[int, int]]) -> None:
    for one in name_ranges([f"floors/{floor}/rooms/{room}/tap" for floor, room in sorted(pairs)]):
        assert "more" in one.words or sorted(_meant(one.words)) == sorted(one.names)


def _meant(said: str) -> list[str]:
    """The names that a range of rooms stands for, read back from its words."""
    found = re.fullmatch(r"floors[ /](.*)/rooms[ /](.*)/tap", said)
    assert found is not None
    first, second = found.groups()
    return [f"floors/{floor}/rooms/{room}/tap" for floor in _counted(first) for room in _counted(second)]


def _counted(said: str) -> list[int]:
    found: list[int] = []
    for piece in re.split(", | and ", said):
        start, _, rest = piece.partition(" to ")
        end, _, step = rest.partition(" in steps of ")
        found += range(int(start), int(end or start) + 1, int(step or 1))
    return found
