"""Words of a review sheet: answers, values against their bounds, subjects, how firm a clause is."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.layout.units import Units, show
from plumbnet.rules import Answered, AnswerWord, Measured, Ruling, listed

ANSWERS = {
    AnswerWord.MET: "met",
    AnswerWord.BROKEN: "BROKEN",
    AnswerWord.NOT_APPLICABLE: "not applicable",
    AnswerWord.UNTOLD: "cannot be told",
}
"""The four answers, as a sheet prints them."""
CHAPTERS = {
    "expansion": "Growth of heated water",
    "relief": "Relief valves",
    "tanks": "Expansion tanks",
    "pressures": "Pressures",
    "hot_water": "Stores of hot water",
    "devices": "Checks, pumps and reducers",
    "protection": "Protection of drinking water",
}
"""The chapters of a sheet by the folder of their requirements, in the order in which they are read."""
_MOST_NAMES = 8
"""Subjects that are named, of those that have one answer in common."""


@dataclass(frozen=True, slots=True)
class AnswerRow:
    """Subjects that have one answer in common: who they are, what it is, and what was found."""

    subjects: str
    word: AnswerWord
    found: str
    answers: tuple[Answered, ...]


def measured_in_words(measured: Measured, units: Units) -> str:
    """A value against its bound, in the units of a report."""
    value, bound = (show(each, measured.dimension, units) for each in (measured.value, measured.bound))
    return f"{value}, at {'least' if measured.at_least else 'most'} {bound}"


def found_in_words(answered: Answered, units: Units) -> str:
    """What was found of a subject: words, the value against its bound, or both."""
    value = "" if answered.measured is None else measured_in_words(answered.measured, units)
    if answered.word is AnswerWord.UNTOLD:
        return f"the file does not say {answered.text}"
    return "; ".join(each for each in (answered.text.rstrip("."), value) if each)


def clause_with_state(ruling: Ruling) -> str:
    """A clause and how firm it is: read, common practice, or from memory."""
    state = ruling.ground.value
    return f"[{ruling.clause}]" if ruling.clause.startswith(state) else f"[{ruling.clause}; {state}]"


def answer_rows(answers: Sequence[Answered], units: Units) -> Iterator[AnswerRow]:
    """Answers of one requirement, those alike in one row: what is broken stands by itself."""
    groups: dict[object, list[Answered]] = {}
    for one in answers:
        key: object = (one.word, _kind_of(one, units)) if one.finding is None else id(one)
        groups.setdefault(key, []).append(one)
    for group in groups.values():
        yield AnswerRow(_subjects(group), group[0].word, _found(group, units), tuple(group))


def _kind_of(one: Answered, units: Units) -> str:
    """What answers that stand in one row have in common beside the word: what was found, or the bound."""
    if one.measured is None:
        return one.text
    return f"{one.text} {show(one.measured.bound, one.measured.dimension, units)}"


def _subjects(group: Sequence[Answered]) -> str:
    names = list(dict.fromkeys(one.parts[0] for one in group if one.parts))
    lines = {name: one.line for one in group for name in one.parts[:1]}
    shown = [f"{name} (line {lines[name]})" if lines[name] and len(names) == 1 else name for name in names]
    return listed(shown, most=_MOST_NAMES) if shown else "the layout"


def _found(group: Sequence[Answered], units: Units) -> str:
    """What was found of subjects in one row; of several values the least and the greatest."""
    ends = sorted((one.measured for one in group if one.measured is not None), key=lambda one: one.value)
    shown = dict.fromkeys(show(one.value, one.dimension, units) for one in ends)
    if len(shown) > 1:
        return f"{next(iter(shown))} to {measured_in_words(ends[-1], units)}"
    return found_in_words(group[0], units)
