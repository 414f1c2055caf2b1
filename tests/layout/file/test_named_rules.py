"""Rules as a layout names them; tests/faults has every message."""

from typing import TYPE_CHECKING

from plumbnet.layout.file.named_rules import named_rules, rules_places
from plumbnet.layout.model.circuit import Circuit
from plumbnet.layout.yaml.source import parse_yaml

if TYPE_CHECKING:
    from plumbnet.layout.model.validation_messages import Mistake
    from plumbnet.layout.yaml.node import Plain


def test_what_is_right_is_taken_over_and_what_is_wrong_told() -> None:
    told: list[Mistake] = []
    every: tuple[Plain, ...] = (None, "ipc-2021", {"water": "ipc-2021"}, {"heating": "us-boiler", "water": "ipc-2021"})
    for right in every:
        assert named_rules(right, told.append) == right
    assert told == []
    assert named_rules({"water": "ipc-2021", "heting": "us-boiler"}, told.append) == {"water": "ipc-2021"}
    assert named_rules({"water": 2021}, told.append) is None
    assert named_rules([], told.append) is None
    assert [one.path for one in told] == [("rules", "heting"), ("rules", "water"), ("rules",)]


def test_each_name_stands_at_its_own_place_and_one_for_all_at_that_of_all() -> None:
    one, two = (parse_yaml(text, []) for text in ("rules: a\n", "rules: {heating: b,\n  water: a}\n"))
    assert one is not None
    assert two is not None
    assert rules_places("a", one) == {Circuit.WATER: (1, 8), Circuit.HEATING: (1, 8)}
    assert rules_places({Circuit.WATER: "a", Circuit.HEATING: "b"}, two) == {
        Circuit.WATER: (2, 10),
        Circuit.HEATING: (1, 18),
    }
    assert rules_places({Circuit.HEATING: "b"}, two) == {Circuit.HEATING: (1, 18)}
    assert rules_places(None, one) == {}
