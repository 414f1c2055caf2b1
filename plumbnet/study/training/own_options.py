"""The options that a trainer offers: their words, the beliefs that stand behind them, and what is wrong with them."""

from collections.abc import Iterator
from dataclasses import replace

from plumbnet.layout.model import Mistake
from plumbnet.layout.yaml import quoted
from plumbnet.study.beliefs import (
    ChoiceHints,
    Hint,
    NotShown,
    chosen_belief,
    exercise_hints,
    known_beliefs,
    known_misreadings,
    told_as,
)
from plumbnet.study.exercise import Asked, Choice, Exercise
from plumbnet.study.training.question_form import OwnOption, OwnQuestion


class NotPut(Exception):
    """A question of a file cannot be put: the mistake, seen from the question."""

    def __init__(self, mistake: Mistake) -> None:
        super().__init__(str(mistake))
        self.mistake = mistake


def own_answers(own: OwnQuestion) -> set[str]:
    """The options that have to be answers of the sort of question: those of which nobody says what is held in them."""
    return {option for option, one in (own.options or {}).items() if one.held is None}


def unknown_beliefs(own: OwnQuestion) -> Iterator[Mistake]:
    """What is held by no name that there is."""
    names = [*known_beliefs(), *known_misreadings()]
    for option, one in (own.options or {}).items():
        if one.held is not None and one.held not in names:
            text, hint = f"there is no belief {quoted(one.held)}", "plumbnet beliefs lists them"
            yield Mistake(("options", option, "held"), text, hint, meant=(one.held, names))


def own_wording(own: OwnQuestion, asked: Asked) -> dict[str, str]:
    """The words of each option that is offered; empty where they are those of the sort. Raises NotPut."""
    blank = asked.blanks[0]
    if own.options is None or not isinstance(blank, Choice):
        return {}
    for option, one in own.options.items():
        if option not in blank.options and one.held is None:
            text = f"{quoted(option)} is no answer to this question"
            hint = f"its answers are {', '.join(blank.options)}; another says with held what is held in it"
            raise NotPut(Mistake(("options", option), text, hint, at_key=True, meant=(option, blank.options)))
    if blank.right not in own.options:
        text = "the right answer is not among the options"
        raise NotPut(Mistake(("options",), text, f"it is {blank.right}: give it words of your own", at_key=True))
    for name in ("held", "says"):
        if getattr(own.options[blank.right], name) is not None:
            text = f"{quoted(blank.right)} is the right answer, and nothing is held in it"
            raise NotPut(Mistake(("options", blank.right, name), text, f"leave {name} out", at_key=True))
    words = {option: one.words for option, one in own.options.items()}
    if len(set(words.values())) < len(words):
        raise NotPut(Mistake(("options",), "two options have the same words", "give each its own", at_key=True))
    return words


def tied_hints(own: OwnQuestion, exercise: Exercise) -> dict[str, Hint]:
    """What is said of each option that a trainer ties to a belief, or has words for. Raises NotPut."""
    options = own.options or {}
    return {
        option: _tied(own, option, one, exercise)
        for option, one in options.items()
        if one.held is not None or one.says is not None
    }


def _tied(own: OwnQuestion, option: str, one: OwnOption, exercise: Exercise) -> Hint:
    if one.held is None:
        first = exercise_hints(exercise)[0]
        read = first.options[option] if isinstance(first, ChoiceHints) else None
        if read is None:
            raise TypeError("the first blank of this sort of question is a choice")
        return replace(read, text=one.says or read.text)
    if one.says is not None:
        return told_as(one.held, one.says)
    heater = exercise.asked.heater or own.heater or exercise.report.heaters[0].name
    try:
        return chosen_belief(exercise.report, heater, one.held)
    except NotShown as error:
        text = f"{quoted(one.held)} is told of {error}, and {quoted(own.layout)} does not show that here"
        hint = "write with says what is said to who takes it"
        raise NotPut(Mistake(("options", option, "held"), text, hint)) from error
