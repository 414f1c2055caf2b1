"""Layouts with assemblies to systems: what a person would have written out by hand comes out."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import End, System
from plumbnet.layout.yaml.fault import LayoutError

HOUSES = """
plumbnet: 1
assemblies:
  house:
    ports: {in: stop.in}
    parts:
      stop: valve
      split: tee
      heater: {kind: storage_heater, volume: 40 gal, setpoint: 120 degF, relief: {pressure: 150 psi}}
      odd: {kind: device, ports: [in, out], passages: [{free: [in, out]}]}
      tap: {kind: fixture, elevation: 3 ft}
    runs:
      - stop -> split -> heater -> odd -> tap.hot
      - {path: split -> tap.cold, pipe: copper-L 1 in, length: 10 ft}
parts:
  street: {kind: main, pressure: 60 psi}
  t: tee
  houses: {use: house, times: 3, elevation: {first: 0 ft, step: 5 ft}}
runs:
  - street -> t
  - {path: t -> houses/each, pipe: copper-L 1 in, length: [10 ft, 20 ft, 30 ft]}
"""


def read(text: str) -> System:
    return read_system(text.strip().encode(), file="f.yaml")


def test_every_part_and_pipe_keeps_two_places() -> None:
    system = read(HOUSES)
    assert [system.line_of(name) for name in ("houses/2/tap", "houses/2/heater/relief", "t")] == [10, 8, 16]
    assert [system.asked_line_of(name) for name in ("houses/2/tap", "houses/2/heater/relief", "t")] == [17, 17, 0]
    inside = next(pipe for pipe in system.pipes if pipe.end == End("houses/3/tap", "cold"))
    outside = next(pipe for pipe in system.pipes if pipe.end == End("houses/3/stop", "in"))
    assert (inside.line, inside.asked, outside.line, outside.asked) == (13, 17, 20, 0)


def test_pipes_have_their_own_lengths_and_water() -> None:
    system = read(HOUSES)
    lengths = [pipe.length_m for pipe in system.pipes if pipe.end.port == "in" and pipe.line == 20]
    assert lengths == pytest.approx([3.048, 6.096, 9.144])
    assert len({pipe.volume_m3 for pipe in system.pipes if pipe.line == 13}) == 1


def test_a_device_with_ports_of_its_own_is_joined_in_every_instance() -> None:
    names = [pipe.name for pipe in read(HOUSES).pipes]
    assert [names.count(f"houses/{k}/odd -> houses/{k}/tap") for k in (1, 2, 3)] == [1, 1, 1]


def test_instances_and_their_heights_are_kept() -> None:
    system = read(HOUSES)
    found = {name: (one.assembly, one.line, one.lift) for name, one in system.assembled.items()}
    assert found == {f"houses/{k + 1}": ("house", 17, f"{5 * k} ft") for k in range(3)}
    assert system.groups == {"houses": ("1", "2", "3")}
    assert system.instance_around("houses/2/heater/relief") == "houses/2"


def test_a_group_that_opens_may_stand_in_an_assembly() -> None:
    text = """
plumbnet: 1
units: metric-bar
assemblies:
  plant:
    ports: {in: group.in}
    parts:
      {group: {kind: safety_group, set: 7}, heater: {kind: storage_heater, volume: 100, setpoint: 60}, tap: fixture}
    runs: [group -> heater -> tap.hot]
parts: {street: {kind: main, pressure: 3}, t: tee, plants: {use: plant, times: 2}}
runs: [street -> t -> plants/each]
"""
    system = read(text)
    assert list(system.instances) == ["plants/1/group", "plants/2/group"]
    names = [pipe.name for pipe in system.pipes]
    assert "t -> plants/2/group/valve" in names
    assert "plants/2/group/branch -> plants/2/heater" in names


WARDS = """
plumbnet: 1
assemblies:
  ward:
    ports: [hot]
    parts: {hot: tee, taps: {kind: fixture, times: 2}}
    runs: [hot -> taps/each.hot]
parts:
  street: {kind: main, pressure: 60 psi}
  wards: {use: ward, times: 3, elevation: [0 ft, 5 ft, 1e9 ft]}
runs: [street -> wards/each.hot]
"""


def test_an_instance_higher_than_anything_stands_is_told_of_its_parts_alone() -> None:
    with pytest.raises(LayoutError) as refused:
        read(WARDS)
    told = [fault.text for fault in refused.value.faults]
    assert sum("too high" in text for text in told) == 2
    assert not any("no part" in text for text in told)
