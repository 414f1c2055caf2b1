"""A register of requirements for a test: empty, with tests that find what they are told to."""

from collections.abc import Iterator

import pytest
from conftest import system

import plumbnet
from plumbnet.rules import answering
from plumbnet.rules import requirement as registry
from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.four_answers import Answer, Breach
from plumbnet.rules.requirement import Requirement
from plumbnet.rules.rule_profile import Profile

DRAWN = system("street -> cv -> tee -> heater -> tap.hot")


def facts() -> Facts:
    return plumbnet.check(DRAWN).facts


def on(*parts: str, text: str = "It is so.") -> registry.Test:
    """A test that finds each part once."""

    def found(_facts: Facts, _profile: Profile) -> Iterator[Answer]:
        """A thing is found.

        It matters. Put it right.
        """
        for part in parts:
            yield Breach((part,), text, "Put it right.")

    return found


def emptied(monkeypatch: pytest.MonkeyPatch) -> dict[str, Requirement]:
    """An empty register in place of the real one."""
    empty: dict[str, Requirement] = {}
    for module in (registry, answering):
        monkeypatch.setattr(module, "REQUIREMENTS", empty)
    monkeypatch.setattr(registry, "RESTS_ON", {})
    return empty
