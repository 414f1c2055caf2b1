from study_results import ADA, BEN, CHECK, METER, RIGHT, given

from plumbnet.study.training.class_table import Holding, class_rows
from plumbnet.study.training.results_file import Results, TryGiven

ROWS = class_rows({"Ada": ADA, "Ben": BEN, "Cy": given("2026-03-01", Results(), RIGHT, could=(METER,))})


def test_beliefs_stand_before_misreadings_and_each_says_who_held_it() -> None:
    assert [(row.name, row.is_belief, row.held_by) for row in ROWS] == [
        (METER, True, ("Ada",)),
        (CHECK, False, ("Ben",)),
    ]
    assert ROWS[0].holds == "A meter is no valve."
    assert [row.name for row in class_rows({"Ada": ADA, "Ben": BEN, "Eve": BEN})] == [METER, CHECK]


def test_row_tells_how_often_it_could_be_held_was_held_and_how_it_went_last() -> None:
    assert ROWS[0].holdings == (
        Holding("Ada", could=2, held=1, put_right=1, last_day="2026-03-02", holds_last=False),
        Holding("Cy", could=1, held=0, put_right=0, last_day="2026-03-01", holds_last=False),
    )
    assert ROWS[1].holdings[1] == Holding("Ben", 1, 1, 0, "2026-03-01", holds_last=True)


def test_name_that_this_program_does_not_know_is_kept() -> None:
    odd = given("2026-03-01", Results(), TryGiven(given="open", held="of-another-version"), could=())
    (row,) = class_rows({"Dee": odd})
    assert (row.name, row.holds, row.is_belief) == ("of-another-version", "of-another-version", False)
