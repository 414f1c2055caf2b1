"""Lists of names in sentences: told in short, and nothing else touched."""

import pytest

from plumbnet.report.prose.name_lists import lists_in_short, long_in_short

ROOMS = [f"rooms/{n}/tap" for n in range(1, 31)]
KNOWN = {*ROOMS, "north heater", "tank", "a", "b", "c", "d", "street"}


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (f"feeds {', '.join(ROOMS[:-1])} and {ROOMS[-1]}.", "feeds rooms 1 to 30/tap."),
        (f"(a, {', '.join(ROOMS)}, b, c and d: 3 psi)", "(a, rooms 1 to 30/tap, b, c and d: 3 psi)"),
        ("by a, b and c, as told", "by a, b and c, as told"),
        ("the north heater, a, b and c warm", "the north heater, a, b and c warm"),
        ("a and b stop it, x, c and d too", "a and b stop it, x, c and d too"),
        ("nothing, at all and none", "nothing, at all and none"),
        ("", ""),
        ("of rooms/1/tap, rooms/2/tap and rooms/3/tap", "of rooms 1 to 3/tap"),
        ("of rooms/1/tap and rooms/2/tap", "of rooms/1/tap and rooms/2/tap"),
        ("street, tank, a, b, c, d, north heater, rooms/1/tap and rooms/2/tap", "street, tank, a, b, c, d and 3 more"),
        (
            f"of {', '.join(ROOMS[:5])} and x, and of {', '.join(ROOMS[5:9])}",
            "of rooms 1 to 5/tap and x, and of rooms 6 to 9/tap",
        ),
        (
            "xrooms/1/tap, rooms/2/tap, rooms/3/tap and rooms/4/taps",
            "xrooms/1/tap, rooms/2/tap, rooms/3/tap and rooms/4/taps",
        ),
    ],
    ids=range(12),
)
def test_long_lists_are_told_in_short_and_all_else_stays(text: str, told: str) -> None:
    assert lists_in_short(text, KNOWN) == told


def test_only_a_text_that_names_make_long_is_told_in_short() -> None:
    names = [f"heater{number}" for number in range(200)]
    short, long = f"for {', '.join(names[:9])} and tap", f"for {', '.join(names[:-1])} and {names[-1]}"
    assert long_in_short(short, {*names}) == short
    assert long_in_short(long, {*names}) == "for heater0 to 199"
