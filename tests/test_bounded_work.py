"""What must not be done more often the larger a layout is: calls are counted, never seconds."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from families import FAMILIES

import plumbnet
from plumbnet.analysis.observations import relief_facts, tank_servicing
from plumbnet.layout.edits import edit_draft
from plumbnet.network import network
from plumbnet.network.loops import heated_volume, loops
from plumbnet.physics.equilibrium.flow import FlowGraph
from plumbnet.physics.histories.push import Gates
from plumbnet.study.remedies.remedy_search import remedies_if_small

SMALL, LARGE = 30, 90


@contextmanager
def counted(owner: Any, name: str) -> Iterator[list[int]]:  # noqa: ANN401  a module or a class
    """How often a function is called, in a list of one."""
    calls, real = [0], getattr(owner, name)

    def count(*given: Any, **named: Any) -> Any:  # noqa: ANN401  a stand-in
        calls[0] += 1
        return real(*given, **named)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(owner, name, count)
        yield calls


def checked(family: str, parts: int) -> None:
    remedies_if_small(plumbnet.check(plumbnet.read_bytes(FAMILIES[family](parts).encode())))


def calls(family: str, parts: int, owner: Any, name: str, act: Callable[[str, int], None] = checked) -> int:  # noqa: ANN401  as above
    with counted(owner, name) as found:
        act(family, parts)
    return found[0]


@pytest.mark.parametrize(
    ("family", "owner", "name"),
    [
        ("chain-of-checks", Gates, "pushes"),
        ("chain-of-reducers", Gates, "pushes"),
        ("one-heater-before-tanks-in-a-chain", FlowGraph, "_fill"),
        ("checks-side-by-side", network, "reach"),
        ("relief-valves", relief_facts, "_joined"),
        ("heaters-in-a-ring", heated_volume, "_loop_pieces"),
        ("streets", tank_servicing, "_reached"),
    ],
)
def test_search_is_done_as_often_in_a_large_layout_as_in_a_small_one(family: str, owner: Any, name: str) -> None:  # noqa: ANN401  as above
    small = calls(family, SMALL, owner, name)
    assert 0 < small == calls(family, LARGE, owner, name)


def test_pipes_are_gathered_once_for_all_inserts_of_a_scenario() -> None:
    def supposed(family: str, parts: int) -> None:
        plumbnet.whatif(plumbnet.read_bytes(FAMILIES[family](parts).encode()), scenario="many")

    small = calls("scenario-of-inserts", SMALL, edit_draft, "_gathered", supposed)
    assert 0 < small == calls("scenario-of-inserts", LARGE, edit_draft, "_gathered", supposed)


def test_loops_are_sought_of_no_more_pumps_than_the_budget_has(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(loops, "LOOPS", 500)
    assert 0 < calls("ladder-of-pumps", LARGE, loops, "_driven") < LARGE / 3
