"""A layout to all that its page knows beforehand: title, what may be touched, how each is written as a change."""

from typing import TypedDict

from plumbnet.layout.edits import change_fields
from plumbnet.layout.rewriting import inline_yaml
from plumbnet.layout.units import PRESSURE, show
from plumbnet.report.schematic import title_of
from plumbnet.rules import rules_in_words
from plumbnet.study.touching import Touchable, TouchNumber, TouchOption, TouchStates


class OptionTold(TypedDict):
    """An option: its words, of what sort, and each of its changes as a line of a scenario."""

    words: str
    sort: str
    yaml: list[str]


class NumberTold(TypedDict):
    """A number, and what stands before and behind its value where it is written as a change."""

    words: str
    value: float
    unit: str
    yaml: tuple[str, str]


class TouchableTold(TypedDict):
    """A thing that can be touched; `now` says how it stands as drawn."""

    name: str
    kind: str
    now: str
    pipe: bool
    options: list[OptionTold]
    numbers: list[NumberTold]


class BoardTold(TypedDict):
    """What the page is told before anything is touched; `digest` stands before every code of a state."""

    title: str
    digest: str
    file: str
    rules: str
    unit: str
    heaters: list[str]
    touchables: list[TouchableTold]


def board_data(states: TouchStates) -> BoardTold:
    """What the page is told before anything is touched."""
    report = states.drawn
    return {
        "title": title_of(report),
        "digest": states.digest,
        "file": report.system.record.sha256[:12],
        "rules": rules_in_words(report.rules.named),
        "unit": show(0.0, PRESSURE, report.facts.units).split(" ")[1],
        "heaters": [heater.name for heater in report.heaters],
        "touchables": [_touchable(one) for one in states.touchables],
    }


def _touchable(one: Touchable) -> TouchableTold:
    return {
        "name": one.name,
        "kind": one.kind.replace("_", " "),
        "now": one.now,
        "pipe": one.pipe is not None,
        "options": [_option(option) for option in one.options],
        "numbers": [_number(one.name, number) for number in one.numbers],
    }


def _option(option: TouchOption) -> OptionTold:
    changes = [
        f"{action}: {inline_yaml(value)}" for each in option.changes for action, value in change_fields(each).items()
    ]
    return {"words": option.words, "sort": option.sort.value, "yaml": changes}


def _number(name: str, number: TouchNumber) -> NumberTold:
    before = f"set: {{part: {inline_yaml(name)}, {number.field}: "
    return {"words": number.words, "value": number.value, "unit": number.unit, "yaml": (before, f" {number.unit}}}")}
