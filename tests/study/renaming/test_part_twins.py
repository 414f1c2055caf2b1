"""Parts that nobody can tell apart, paired so that the pairs fit together."""

from conftest import system

from plumbnet.layout.model.system import System
from plumbnet.study.renaming.part_colours import Side
from plumbnet.study.renaming.part_twins import twins
from plumbnet.study.renaming.surroundings import surroundings

KNOWN = {"street": "street", "tee": "tee"}


def paired(before: System, after: System, known: dict[str, str] | None = None) -> dict[str, str]:
    known = KNOWN if known is None else known
    later = {name: name for name in known.values()}
    return twins(Side(surroundings(before), known), Side(surroundings(after), later))


def test_twins_are_taken_in_the_order_of_the_files() -> None:
    before = system("street -> tee -> tap1.cold\ntee -> tap2.cold")
    after = system("street -> tee -> tap4.cold\ntee -> tap3.cold")
    assert paired(before, after) == {"tap1": "tap4", "tap2": "tap3"}


def test_what_hangs_on_a_twin_goes_with_it() -> None:
    """tee -> valve1 -> tap1, tee -> valve2 -> tap2; then the taps stand in the other order in the file."""
    before = system("street -> tee -> valve1 -> tap1.cold\ntee -> valve2 -> tap2.cold")
    after = system("street -> tee\ntee -> valve3\ntee -> valve4\nvalve4 -> tap4.cold\nvalve3 -> tap3.cold")
    assert paired(before, after) == {"valve1": "valve3", "valve2": "valve4", "tap1": "tap3", "tap2": "tap4"}


def test_more_of_one_colour_on_one_side_are_no_twins() -> None:
    before = system("street -> tee -> tap1.cold\ntee -> tap2.cold")
    after = system("street -> tee -> tap3.cold\ntee -> tap4.cold\ntee -> tap5.cold")
    assert paired(before, after) == {}


def test_where_nothing_is_known_the_first_is_taken_for_the_first() -> None:
    before, after = system("street -> tee -> tap1.cold"), system("street -> tee -> tap2.cold")
    assert paired(before, after, {}) == {"street": "street", "tee": "tee", "tap1": "tap2"}


def test_rings_that_do_not_fit_into_each_other_have_no_pairs() -> None:
    """Two rings of three tees, and one ring of six: each tee looks like every other one, and they are not the same.

    1 - 2    4 - 5        1 - 2 - 3
     \\ /      \\ /         |       |
      3        6          6 - 5 - 4
    """
    street = "street -> tee -> tap.cold\n"
    two = system(f"{street}tee1 -> tee2 -> tee3 -> tee1\ntee4 -> tee5 -> tee6 -> tee4")
    one = system(f"{street}tee11 -> tee12 -> tee13 -> tee14 -> tee15 -> tee16 -> tee11")
    known = {"street": "street", "tee": "tee", "tap": "tap"}
    assert paired(two, one, known) == {}
    same = system(f"{street}tee11 -> tee12 -> tee13 -> tee11\ntee14 -> tee15 -> tee16 -> tee14")
    assert len(paired(two, same, known)) == len(two.parts) - len(known)
