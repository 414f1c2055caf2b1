"""A random layout with assemblies is the layout that is written out by hand: parts, pipes, verdicts, findings."""

from collections import Counter

import pytest
from conftest import times
from hypothesis import given, note

import plumbnet
from oracles.random_assemblies import Pair, assembled_layouts
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError

SAME = 1e-9
"""Sums over the same pipes in another order differ by less."""


def renamed(text: str) -> str:
    return text.replace("--", "/")


def read(text: str) -> System | None:
    try:
        return plumbnet.read_bytes(text.encode())
    except LayoutError:
        return None


def pipes(system: System) -> Counter[tuple[object, ...]]:
    return Counter(
        (*((renamed(end.part), end.port) for end in pipe.ends), round(pipe.volume_m3, 12), pipe.tube)
        for pipe in system.pipes
    )


def test_random_layouts_with_assemblies_are_those_written_out() -> None:
    drawn = Counter[str]()

    @times(0.6)
    @given(assembled_layouts())
    def holds(pair: Pair) -> None:
        note(pair.assembled)
        one, other = read(pair.assembled), read(pair.plain)
        assert (one is None) == (other is None)
        if one is None or other is None:
            drawn["refused"] += 1
            return
        drawn["read"] += 1
        drawn["nested"] += "floors" in one.groups
        assert sorted(one.parts) == sorted(map(renamed, other.parts))
        assert all(one.parts[renamed(name)] == part for name, part in other.parts.items())
        assert pipes(one) == pipes(other)
        drawn["answered"] += is_answered_alike(one, other)

    holds()
    assert drawn["answered"] > drawn["refused"]
    assert drawn["nested"] > 3


def is_answered_alike(one: System, other: System) -> bool:
    """Whether both are answered, and alike; a layout of which nothing can be computed is so in both forms."""
    try:
        mine = plumbnet.check(one)
    except LayoutError:
        with pytest.raises(LayoutError):
            plumbnet.check(other)
        return False
    theirs = plumbnet.check(other)
    answers = {renamed(heater.name): heater for heater in theirs.heaters}
    assert {heater.name for heater in mine.heaters} == set(answers)
    for heater in mine.heaters:
        assert heater.verdict is answers[heater.name].verdict
        assert heater.limit_pa == pytest.approx(answers[heater.name].limit_pa, rel=SAME)
        assert heater.expansion_m3 == pytest.approx(answers[heater.name].expansion_m3, rel=SAME)
    assert Counter(found.name for found in mine.findings) == Counter(found.name for found in theirs.findings)
    return True
