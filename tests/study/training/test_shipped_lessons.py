"""The lessons that come with the program: every right answer as stated by hand, and what stands behind the others."""

from functools import cache
from pathlib import Path

import pytest

from plumbnet.layout.authoring.shipped_layouts import example_bytes
from plumbnet.study.beliefs.belief_file import known_beliefs
from plumbnet.study.beliefs.hint import ChoiceHints
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.training.lesson_heads import known_lessons
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.question_file import questions_at
from plumbnet.study.training.shipped_lessons import (
    lesson_bytes,
    lesson_layout,
    lesson_layout_names,
    lesson_names,
    questions_bytes,
)

PASCAL_IN = {"us": 6894.757293168361, "metric": 1000.0}
ATMOSPHERE = {"us": 14.696, "metric": 101.325}
"""In psi and kPa."""
WATER_COLUMN = {"us": 0.433, "metric": 9.8}
"""Of a foot and of a metre of water, in psi and kPa."""
HIGHEST = {"us": 80.0, "metric": 551.6}
"""At a tap under general practice, in psi and kPa."""
KG_L = {50: 0.99970, 130: 0.98588, 140: 0.98320, 10: 0.99970, 55: 0.98569, 60: 0.98320}
"""Density of water by its temperature, in degF from 50, 130 and 140, in degC the others (steam tables, by hand)."""

Answer = tuple[str, float | None]
ANSWERS: dict[str, tuple[Answer, ...]] = {
    # A plain meter is a pipe: the street takes it, at its own 62. The shut stop and the checked meter stop it. With a
    # check nothing is left but the relief valve at its set. The tank hangs at split; only heater-stop parts them.
    "check-and-meter": (
        ("open", None),
        ("street", 62.0),
        ("house-stop", None),
        ("trapped", None),
        ("heater/relief", 150.0),
        ("5 gal", 62.0),
        ("heater-stop", None),
    ),
    "check-and-meter-metric": (
        ("open", None),
        ("street", 420.0),
        ("house-stop", None),
        ("trapped", None),
        ("cylinder/relief", 700.0),
        ("20 L", 420.0),
        ("cylinder-stop", None),
    ),
    # A reducer without a bypass lets nothing back. With one the street takes it at the main's 74, below 80; a check
    # before it stops what the bypass lets through, and a main of 118 is past 80 before it opens. A tank before the
    # reducer is out of reach; one behind it takes the growth.
    "reducer-and-bypass": (
        ("reducer", None),
        ("trapped", None),
        ("street", 74.0),
        ("trapped", None),
        ("trapped", None),
        ("heater/relief", 150.0),
        ("controlled", None),
    ),
    "reducer-and-bypass-metric": (
        ("reducer", None),
        ("trapped", None),
        ("street", 500.0),
        ("trapped", None),
        ("trapped", None),
        ("cylinder/relief", 1000.0),
        ("controlled", None),
    ),
    # Without a pump a tankless heater fires only while a tap runs, with one it stands in a loop behind the dual check;
    # its coil needs the smallest tank there is. A pump closes no cold pipe. Past cold-a the water goes round by hot-a.
    "loops-and-tankless": (
        ("on-demand", None),
        ("trapped", None),
        ("2 gal", 60.0),
        ("open", None),
        ("tank", 58.0),
        ("heater-a", None),
    ),
    "loops-and-tankless-metric": (
        ("on-demand", None),
        ("trapped", None),
        ("8 L", 410.0),
        ("open", None),
        ("tank", 400.0),
        ("cylinder-a", None),
    ),
}

TANKS = [
    # lesson, question, heated gallons or litres, from, to, lowest tap above the heater in ft or m, sizes below and at
    ("check-and-meter", 6, 40.0, 50, 140, 2.0, (3.0, 5.0)),
    ("check-and-meter-metric", 6, 180.0, 10, 60, 1.0, (12.0, 20.0)),
    ("loops-and-tankless", 3, 0.68, 50, 130, 3.0, (0.0, 2.0)),  # the coil, and 19 ft of hot pipe as far as the return
    ("loops-and-tankless-metric", 3, 2.72, 10, 55, 1.0, (0.0, 8.0)),
]


@cache
def posed(name: str) -> tuple[PosedExercise, ...]:
    return questions_at(name).posed


def system_of(name: str) -> str:
    return "metric" if name.endswith("-metric") else "us"


@pytest.mark.parametrize("name", ANSWERS)
def test_right_answers_are_those_stated_by_hand(name: str) -> None:
    found = []
    for one in posed(name):
        first, *others = one.exercise.asked.blanks
        assert isinstance(first, Choice)
        number = next((blank.right for blank in others if isinstance(blank, Measure)), None)
        found.append((first.right, None if number is None else round(number / PASCAL_IN[system_of(name)], 1)))
    assert tuple(found) == ANSWERS[name]


@pytest.mark.parametrize(("name", "question", "volume", "cold", "hot", "tap", "sizes"), TANKS)
def test_tank_is_that_of_boyles_law_by_hand(  # noqa: PLR0913, PLR0917  the numbers of a sum
    name: str, question: int, volume: float, cold: int, hot: int, tap: float, sizes: tuple[float, float]
) -> None:
    units = system_of(name)
    right, charge = ANSWERS[name][question - 1]
    assert charge is not None
    limit = HIGHEST[units] + tap * WATER_COLUMN[units]
    grown = volume * (KG_L[cold] / KG_L[hot] - 1.0)
    least = grown / (1.0 - (charge + ATMOSPHERE[units]) / (limit + ATMOSPHERE[units]))
    below, enough = sizes
    assert below < least <= enough
    assert right.startswith(f"{enough:.0f} ")
    prompt = posed(name)[question - 1].worded.asked.prompt
    told_growth = next(float(word) for word in prompt.replace("by", "").split() if word.startswith(("0.", "3.0")))
    assert told_growth == pytest.approx(grown, rel=0.02)
    assert f" {limit:.1f} psi" in prompt or f" {limit:.0f} kPa" in prompt


@pytest.mark.parametrize("name", ANSWERS)
def test_something_is_said_to_every_other_option_and_a_belief_stands_in_most_questions(name: str) -> None:
    believed = 0
    for one in posed(name):
        blank, hints = one.worded.asked.blanks[0], one.hints[0]
        assert isinstance(blank, Choice)
        assert isinstance(hints, ChoiceHints)
        assert set(blank.options) - {blank.right} <= set(hints.options)
        believed += bool(set(one.could_hold) & set(known_beliefs()))
    assert believed >= len(posed(name)) - 3


def test_both_editions_ask_the_same_in_units_of_their_own() -> None:
    for name in lesson_names():
        other = name.removesuffix("-metric")
        assert [one.exercise.question.name for one in posed(name)] == [
            one.exercise.question.name for one in posed(other)
        ]
        assert {one.exercise.origin.units for one in posed(name)} == {system_of(name)}


def test_every_lesson_takes_a_quarter_of_an_hour_and_is_answered_here() -> None:
    assert set(lesson_names()) == set(known_lessons()) == set(ANSWERS)
    assert {head.minutes for head in known_lessons().values()} == {15}
    assert all(5 <= head.questions <= 7 for head in known_lessons().values())


def test_layout_is_that_of_a_lesson_or_an_example_by_name() -> None:
    assert lesson_layout("open-house") == example_bytes("open-house")
    assert b"14 Quay Street" in lesson_layout("quay-street")
    assert {"open-house", "quay-street"} <= set(lesson_layout_names())
    assert len(lesson_layout_names()) == len(set(lesson_layout_names()))


@pytest.mark.parametrize("read", [lesson_bytes, lesson_layout])
def test_name_there_is_not_is_a_key_error(read: object) -> None:
    assert callable(read)
    with pytest.raises(KeyError):
        read("no-such")


def test_name_of_a_lesson_is_read_only_where_no_file_of_that_name_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert questions_bytes("check-and-meter") == lesson_bytes("check-and-meter")
    Path("check-and-meter").write_bytes(b"mine")
    assert questions_bytes("check-and-meter") == b"mine"
    with pytest.raises(FileNotFoundError):
        questions_bytes("no-such")
