"""A report and what may be touched of it to the report on any state, and which touches are faults."""

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis import Report
from plumbnet.api import check
from plumbnet.layout.edits import change_of, with_changes
from plumbnet.layout.model import Change, Sort
from plumbnet.rules.facts import Verdict
from plumbnet.study.touching.touch_code import Touch, UnknownTouch
from plumbnet.study.touching.touchable_things import Touchable, TouchNumber, TouchOption, touchables

_DIGITS = 12
"""Signs of the digest that stands before the code of a state."""


@dataclass(frozen=True)
class TouchStates:
    """A layout as drawn, under its rules, and every state of it that touching makes."""

    drawn: Report
    _told: dict[tuple[Touch, ...], dict[str, Verdict]] = field(default_factory=dict, repr=False, compare=False)

    @cached_property
    def touchables(self) -> tuple[Touchable, ...]:
        """What may be touched, in an order that never changes for one file."""
        return touchables(self.drawn)

    @cached_property
    def digest(self) -> str:
        """Of the file and all that may be touched of it: a code under another digest is of another file."""
        said = [
            [one.name, one.kind, [each.words for each in one.options], [each.field for each in one.numbers]]
            for one in self.touchables
        ]
        record = self.drawn.system.record.sha256
        return hashlib.sha256(json.dumps([record, said]).encode()).hexdigest()[:_DIGITS]

    def changes(self, touches: Sequence[Touch]) -> tuple[Change, ...]:
        """The changes that touches make, in their order. Raises UnknownTouch."""
        return tuple(change for touch in touches for change in self._made(touch))

    def report_in(self, touches: Sequence[Touch]) -> Report:
        """The report on a state. Raises UnknownTouch; ChangeError, LayoutError where it cannot be made or computed."""
        if not touches:
            return self.drawn
        system = with_changes(self.drawn.system, self.changes(touches))
        return check(
            system, rules=self.drawn.rules, units=self.drawn.facts.units, acceptances=self.drawn.own_acceptances
        )

    def verdicts_in(self, touches: Sequence[Touch]) -> dict[str, Verdict]:
        """The verdict on each heater in a state, worked out once. Raises what `report_in` raises."""
        key = tuple(touches)
        if key not in self._told:
            self._told[key] = {heater.name: heater.verdict for heater in self.report_in(touches).heaters}
        return self._told[key]

    def option(self, touch: Touch) -> TouchOption | None:
        """What a touch chooses; None where it alters a number. Raises UnknownTouch."""
        options = self._touchable(touch).options
        if touch.option is None:
            return None
        if touch.option >= len(options):
            raise UnknownTouch(f"{self._touchable(touch).name} cannot be touched like that; begin with it as drawn")
        return options[touch.option]

    def is_fault(self, touch: Touch) -> bool:
        """Whether a touch is a fault, which is no cure whatever comes of it."""
        option = self.option(touch)
        return option is not None and option.sort is Sort.FAULT

    def sound(self, touches: Sequence[Touch]) -> tuple[Touch, ...]:
        """The touches that are no faults."""
        return tuple(touch for touch in touches if not self.is_fault(touch))

    def in_words(self, touch: Touch) -> str:
        """A touch as it is told: the name, and what it is made."""
        option = self.option(touch)
        name = self._touchable(touch).name
        if option is not None:
            return f"{name}: {option.words}"
        number = self._number(touch)
        return f"{name}: {number.words} {touch.value:g} {number.unit}"

    def put_in(self, touches: Sequence[Touch]) -> tuple[Touch, ...]:
        """The touches that put something into a pipe, in the order of the pipes: on them depends where all is drawn."""
        return tuple(sorted((one for one in touches if self._touchable(one).pipe is not None), key=lambda one: one.at))

    def _made(self, touch: Touch) -> tuple[Change, ...]:
        option = self.option(touch)
        if option is not None:
            return option.changes
        number = self._number(touch)
        value = f"{touch.value:.6f}".rstrip("0").rstrip(".")
        return (change_of("set", {"part": self._touchable(touch).name, number.field: f"{value} {number.unit}"}),)

    def _touchable(self, touch: Touch) -> Touchable:
        if touch.at >= len(self.touchables):
            raise UnknownTouch("this state is of another layout; begin with this one as drawn")
        return self.touchables[touch.at]

    def _number(self, touch: Touch) -> TouchNumber:
        numbers = self._touchable(touch).numbers
        if touch.number is None or touch.number >= len(numbers):
            raise UnknownTouch(f"{self._touchable(touch).name} has no such number; begin with it as drawn")
        return numbers[touch.number]
