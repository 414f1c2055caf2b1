"""The runs of a file, each with its pipes."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.rewriting.run_edits import demand_run, joint_of, runs_of, with_pipes
from plumbnet.layout.rewriting.text_places import Unwritable

TEXT = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> split -> heater -> tap.hot
  - {path: split -> tap.cold, volume: 1 gal}
"""
SYSTEM = read_system(TEXT.encode(), file="house.yaml")


def test_each_run_has_its_own_pipes_and_not_those_that_come_with_parts() -> None:
    first, second = runs_of(TEXT, SYSTEM)
    assert [pipe.name for pipe in first.pipes] == ["street -> split", "split -> heater", "heater -> tap"]
    assert [pipe.name for pipe in second.pipes] == ["split -> tap"]
    assert second.path == "split -> tap.cold"


def test_pipe_that_comes_with_a_part_is_laid_by_no_run() -> None:
    with pytest.raises(Unwritable, match="the pipe heater -> heater/relief comes with a part and is laid by no run"):
        demand_run(runs_of(TEXT, SYSTEM), SYSTEM.pipes[0])


def test_run_without_pipes_goes_with_its_line() -> None:
    (last,) = runs_of(TEXT, SYSTEM)[1].pipes
    assert with_pipes(TEXT, SYSTEM, SYSTEM, {id(last): ()}) == TEXT.replace(
        "  - {path: split -> tap.cold, volume: 1 gal}\n", ""
    )


def test_halves_run_the_way_their_run_was_written() -> None:
    at = len(SYSTEM.pipes) - 1
    start, end = SYSTEM.pipes[at].ends
    halves = [SYSTEM.pipes[at], SYSTEM.pipes[at]]
    assert list(joint_of(SYSTEM, at, halves)) == halves
    turned = [type(SYSTEM.pipes[at])(end, start)] * 2
    assert [pipe.start for pipe in joint_of(SYSTEM, at, turned)] == [start, start]
