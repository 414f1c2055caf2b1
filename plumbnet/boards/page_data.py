"""A layout to all that its page knows beforehand: title, what may be touched, how each is written as a change."""

from plumbnet.layout.edits import change_fields
from plumbnet.layout.rewriting import inline_yaml
from plumbnet.layout.units import PRESSURE, show
from plumbnet.report.schematic import title_of
from plumbnet.rules import rules_in_words
from plumbnet.study.touching import Touchable, TouchNumber, TouchOption, TouchStates


def board_data(states: TouchStates) -> dict[str, object]:
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


def _touchable(one: Touchable) -> dict[str, object]:
    return {
        "name": one.name,
        "kind": one.kind.replace("_", " "),
        "now": one.now,
        "pipe": one.pipe is not None,
        "options": [_option(option) for option in one.options],
        "numbers": [_number(one.name, number) for number in one.numbers],
    }


def _option(option: TouchOption) -> dict[str, object]:
    changes = [
        f"{action}: {inline_yaml(value)}" for each in option.changes for action, value in change_fields(each).items()
    ]
    return {"words": option.words, "sort": option.sort.value, "yaml": changes}


def _number(name: str, number: TouchNumber) -> dict[str, object]:
    """A number with what stands before and behind its value where it is written as a change."""
    before = f"set: {{part: {inline_yaml(name)}, {number.field}: "
    return {"words": number.words, "value": number.value, "unit": number.unit, "yaml": [before, f" {number.unit}}}"]}
