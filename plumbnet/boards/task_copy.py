"""Exercises to one page on which each is answered by tapping a part of its picture or a word, opened by a click."""

import json
from collections.abc import Callable, Mapping, Sequence
from typing import TypedDict

from plumbnet.analysis.warmup import NoWarmUp
from plumbnet.boards.heat_up import HeatUpTold, heat_up
from plumbnet.boards.page_files import whole_tasks
from plumbnet.boards.state_answer import StateAnswer, board_answer
from plumbnet.boards.state_picture import board_picture
from plumbnet.layout.units import PRESSURE, Units, parse_measure
from plumbnet.report.worksheets import worksheet
from plumbnet.study.beliefs import BlankHints, ChoiceHints, Hint, MeasureHints
from plumbnet.study.exercise import Blank, Choice, Exercise
from plumbnet.study.touching import TouchStates
from plumbnet.study.training import RESULTS_KEY, Dealt, PosedExercise

TASKS_TITLE = "Exercises"


class HintTold(TypedDict):
    """A belief or a misreading by its name, and what is said to who holds it."""

    name: str
    text: str


class TaskOption(TypedDict):
    """An option: its words, the part of the picture that stands for it, and its hint, None where it is right."""

    word: str
    meaning: str
    part: str | None
    hint: HintTold | None


class TaskNumber(TypedDict):
    """A number that is asked for, in the unit of the layout; `causes` are numbers with their hints, nearest first."""

    unit: str
    right: float
    tolerance: float
    causes: list[tuple[float, HintTold]]
    less: HintTold
    more: HintTold


class TaskBlank(TypedDict):
    """A blank, by its number: options to choose from, or a number to type."""

    blank: int
    prompt: str
    right: str
    options: list[TaskOption]
    number: TaskNumber | None


class TaskTold(TypedDict):
    """An exercise as the page asks it; `parts` are those of its layout in words, `assumed` what is said of none.

    `answer` is what stands in it, and `course` its heat-up, shown once it is done with.
    """

    number: int
    question: str
    place: str
    about: str
    supposed: str
    prompt: str
    because: list[str]
    heater: str | None
    level: int
    units: str
    could: list[str]
    again: dict[str, str] | None
    parts: list[tuple[str, str, str]]
    assumed: str
    picture: dict[str, object]
    answer: StateAnswer
    course: HeatUpTold | None
    blanks: list[TaskBlank]


def tasks_copy(posed: Sequence[PosedExercise], dealt: Dealt | None, told: Callable[[], None] = lambda: None) -> str:
    """The page; `dealt` stands in the answers that it hands in, `told` is called after each exercise."""
    tasks: list[TaskTold] = []
    for one in posed:
        tasks.append(task_told(one))
        told()
    data = {"key": RESULTS_KEY, "dealt": dealt_told(dealt), "tasks": tasks}
    return whole_tasks(TASKS_TITLE, json.dumps(data, separators=(",", ":"), ensure_ascii=False, allow_nan=False))


def dealt_told(dealt: Dealt | None) -> dict[str, object] | None:
    """What was dealt, as it stands in a file of results."""
    return None if dealt is None else dealt.model_dump(by_alias=True, exclude_defaults=True, mode="json")


def task_told(posed: PosedExercise) -> TaskTold:
    """All that the page is told of an exercise."""
    exercise = posed.worded
    states, sheet = TouchStates(exercise.report), worksheet(exercise)
    return {
        "number": exercise.origin.number,
        "question": exercise.question.name,
        "place": exercise.system.title,
        "about": exercise.origin.in_words,
        "supposed": exercise.supposed,
        "prompt": exercise.asked.prompt,
        "because": list(exercise.asked.because),
        "heater": exercise.asked.heater,
        "level": exercise.origin.level.number,
        "units": exercise.origin.units,
        "could": list(posed.could_hold),
        "again": None if posed.again is None else posed.again.model_dump(),
        "parts": list(sheet.parts),
        "assumed": "; ".join(sheet.assumed),
        "picture": board_picture(states, ()),
        "answer": board_answer(states, ()),
        "course": _course(exercise),
        "blanks": [
            _blank(number, blank, hints, exercise, posed.wording)
            for number, (blank, hints) in enumerate(zip(exercise.asked.blanks, posed.hints, strict=False), start=1)
        ],
    }


def _course(exercise: Exercise) -> HeatUpTold | None:
    """The heat-up of the heater asked about, or of the first; None where nothing warms up."""
    report, heater = exercise.report, exercise.asked.heater
    try:
        return heat_up(report, heater or report.heaters[0].name)
    except NoWarmUp:
        return None


def _blank(number: int, blank: Blank, hints: BlankHints, exercise: Exercise, wording: Mapping[str, str]) -> TaskBlank:
    units = exercise.report.facts.units
    told: TaskBlank = {
        "blank": number,
        "prompt": blank.prompt,
        "right": blank.answer(units),
        "options": [],
        "number": None,
    }
    if isinstance(blank, Choice) and isinstance(hints, ChoiceHints):
        meant = {words: option for option, words in wording.items()}
        told["options"] = [
            {
                "word": word,
                "meaning": blank.meanings.get(word, ""),
                "part": option if (option := meant.get(word, word)) in exercise.system.parts else None,
                "hint": _hint(hints.options.get(word)),
            }
            for word in blank.options
        ]
    elif isinstance(hints, MeasureHints):
        told["number"] = _number(hints, units)
    return told


def _hint(hint: Hint | None) -> HintTold | None:
    return None if hint is None else _told(hint)


def _told(hint: Hint) -> HintTold:
    return {"name": hint.name, "text": hint.text}


def _number(hints: MeasureHints, units: Units) -> TaskNumber:
    """Numbers in the unit in which they are typed."""
    unit_pa = parse_measure("1", PRESSURE, units)
    return {
        "unit": PRESSURE.unit_name(units),
        "right": hints.right / unit_pa,
        "tolerance": hints.tolerance / unit_pa,
        "causes": [(cause / unit_pa, _told(hint)) for cause, hint in hints.causes],
        "less": _told(hints.less),
        "more": _told(hints.more),
    }
