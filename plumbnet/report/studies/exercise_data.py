"""Exercises as JSON, keys included: for other programs, and for measuring what an exercise gives away."""

from collections.abc import Sequence

from plumbnet.report.formats import Json, in_order
from plumbnet.study.exercise import Blank, Choice, Exercise


def exercises_json(exercises: Sequence[Exercise]) -> str:
    """One JSON document; ends with a line break. Pressures of keys are in pascal."""
    return in_order({"exercises": [_fields(one) for one in exercises]}) + "\n"


def _fields(one: Exercise) -> Json:
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
        "blanks": [_blank(blank) for blank in asked.blanks],
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
