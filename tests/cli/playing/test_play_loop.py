"""Playing in the terminal: kept, resumed, asked again."""

import pytest
from running import Write, run

from plumbnet.study.exercise.generator import exercises
from plumbnet.study.training.results_file import results_at

FIRST, SECOND = exercises(1, 1, 2, about="verdict")
OTHER = {"open": "trapped", "trapped": "open"}
PLAY = ("exercise", "--play", "--about", "verdict", "--day", "2026-03-01")


def right(number: int) -> str:
    return (FIRST, SECOND)[number].asked.blanks[0].answer("us")


@pytest.fixture
def kept(write: Write) -> str:
    write("other", "")
    return "ada.yaml"


def test_answer_is_kept_when_input_ends_and_it_goes_on_there(kept: str) -> None:
    both = (*PLAY, "--variants", "2", "--results", kept)
    first = run(*both, given=f"{OTHER[right(0)]}\n{right(0)}\n")
    assert first.stdout.endswith(f"0 of 1 right at once, 1 more at the second try. The answers are in {kept}.\n")
    second = run(*both, given=f"{right(1)}\n\n")
    assert second.stdout.startswith("1 of 2 are answered already; it goes on.\n\n2. ")
    assert second.stdout.endswith(f"1 of 1 right at once. The answers are in {kept}.\n")
    assert run(*both).stdout == (
        f"All 2 are answered in {kept}; another --seed deals others, --again {kept} what was missed.\n"
    )


def test_first_try_is_kept_though_no_second_came(kept: str) -> None:
    run(*PLAY, "--results", kept, given=f"{OTHER[right(0)]}\n")
    ((_, answer),) = results_at(kept).answers
    assert [one.given for one in answer.tries] == [OTHER[right(0)]]
    again = run(*PLAY, "--results", kept, given=f"{right(0)}\n\n")
    assert again.stdout.startswith("1. ")


def test_what_was_missed_is_asked_again_and_written_to_the_same_file(kept: str) -> None:
    run(*PLAY, "--results", kept, given=f"{OTHER[right(0)]}\n{right(0)}\n\n")
    again = ("exercise", "--play", "--again", kept, "--day")
    assert run(*again, "2026-03-01").stdout == "Nothing is due on 2026-03-01; the next is on 2026-03-02.\n"
    played = run(*again, "2026-03-02", given="open\ntrapped\n\n").stdout
    assert "Missed on 2026-03-01, asked again." in played
    assert FIRST.system.title not in played
    days = [sitting.day for sitting in results_at(kept).sittings]
    assert days == ["2026-03-01", "2026-03-02"]
    assert run(*again, "2026-03-02").stdout.startswith("Nothing is due on 2026-03-02; the next is on ")
