"""Pipes that correspond, made equal: which do, and that none holds less than before."""

from collections.abc import Mapping
from dataclasses import replace

from conftest import system, times
from hypothesis import given
from oracles.random_layouts import Layout, layouts

from plumbnet.layout.model.system import System
from plumbnet.study.contingency.levelled_pipes import Correspondence

ROOMS = """
street -> tee1 -> heater -> tee2
tee2 -> valve1 -> tap1.hot
tee2 -> {device} -> tap2.hot
"""


def holding(layout: System, litres: Mapping[str, float]) -> System:
    """The layout with so much in the pipes that lead to these parts."""
    pipes = (replace(pipe, volume_m3=litres.get(pipe.end.part, 0.0) / 1000.0) for pipe in layout.pipes)
    return replace(layout, pipes=tuple(pipes))


def rooms(device: str, **parts: str) -> System:
    return holding(system(ROOMS.format(device=device), **parts), {"valve1": 1.0, device: 3.0})


def litres_to(layout: System, *ends: str) -> list[float]:
    return [1000.0 * pipe.volume_m3 for pipe in layout.pipes if pipe.end.part in ends]


def test_pipes_to_parts_that_are_alike_become_as_the_largest_of_them() -> None:
    assert litres_to(Correspondence(rooms("valve2")).levelled(), "valve1", "valve2") == [3.0, 3.0]


def test_pipes_to_parts_of_other_kinds_stay() -> None:
    layout = rooms("cv2")
    assert Correspondence(layout).levelled() is layout


def test_pipes_to_parts_at_other_heights_stay() -> None:
    layout = rooms("valve2", tap2="elevation: 9 ft")
    assert Correspondence(layout).levelled() is layout


def test_parts_that_stand_alike_are_told_by_equal_words() -> None:
    told = Correspondence(rooms("valve2")).parts
    assert told["valve1"] == told["valve2"] != told["tee1"]
    assert len(set(told.values())) == len(told) - 2


@times(0.1)
@given(layouts())
def test_no_pipe_holds_less_and_none_leads_elsewhere(layout: Layout) -> None:
    levelled = Correspondence(layout.system).levelled()
    assert [pipe.ends for pipe in levelled.pipes] == [pipe.ends for pipe in layout.system.pipes]
    assert all(
        now.volume_m3 >= before.volume_m3 for now, before in zip(levelled.pipes, layout.system.pipes, strict=True)
    )
    assert Correspondence(levelled).levelled() is levelled
