"""Exercises as JSON, keys and beliefs included: for other programs, and for measuring what an exercise gives away."""

from collections.abc import Sequence

from plumbnet.report.formats import Json, in_order
from plumbnet.study.beliefs import BlankHints, ChoiceHints, Hint
from plumbnet.study.exercise import Blank, Choice, Exercise


def exercises_json(exercises: Sequence[tuple[Exercise, Sequence[BlankHints]]]) -> str:
    """One JSON document; ends with a line break. Pressures of keys are in pascal.

    Beside each exercise stands what stands behind the answers to each of its blanks that are not the right one.
    """
    return in_order({"exercises": [_fields(*one) for one in exercises]}) + "\n"


def _fields(one: Exercise, hints: Sequence[BlankHints]) -> Json:
    origin, asked = one.origin, one.asked
    return {
        "name": origin.name,
        "seed": origin.seed,
        "level": origin.level.number,
        "number": origin.number,
        "units": origin.units,
        "title": one.system.title,
        "about": one.question.name,
        "supposed": one.supposed,
        "heater": asked.heater,
        "question": asked.prompt,
        "blanks": [{**_blank(blank), **_beliefs(behind)} for blank, behind in zip(asked.blanks, hints, strict=True)],
        "outcome": asked.outcome,
        "because": list(asked.because),
        "profiles": list(asked.profiles),
        "layout": one.text,
    }


def _blank(blank: Blank) -> Json:
    """A blank: options of which one is right, or a quantity in SI; its key is null where it is to stay empty."""
    if isinstance(blank, Choice):
        return {"prompt": blank.prompt, "options": list(blank.options), "key": blank.right}
    return {
        "prompt": blank.prompt,
        "quantity": blank.dimension.name,
        "key_si": blank.right,
        "tolerance_si": blank.tolerance,
    }


def _beliefs(hints: BlankHints) -> Json:
    """What stands behind each option that is not the right one; behind a number by its cause, or else by its side."""
    if isinstance(hints, ChoiceHints):
        return {"beliefs": {option: _belief(hint) for option, hint in hints.options.items()}}
    return {
        "causes": [{"value_si": value, **_belief(hint)} for value, hint in hints.causes],
        "less": _belief(hints.less),
        "more": _belief(hints.more),
    }


def _belief(hint: Hint) -> Json:
    return {"name": hint.name, "holds": hint.holds, "is_belief": hint.is_belief, "text": hint.text}
