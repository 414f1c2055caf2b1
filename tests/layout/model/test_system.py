"""A system as data: pipes, ends, lines."""

from conftest import system

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import End, Pipe, Record, System

BAKERY = b"""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater:
    kind: storage_heater
    volume: 50 gal
    setpoint: 140 degF
    relief: {pressure: 150 psi}
runs:
  - street -> heater
"""


def test_pipe_is_named_by_the_parts_it_joins() -> None:
    pipe = Pipe(End("street", "out"), End("meter", "in"))
    assert pipe.name == "street -> meter"
    assert pipe.ends == (End("street", "out"), End("meter", "in"))


def test_line_of_a_part_is_the_line_that_declares_it() -> None:
    bakery = read_system(BAKERY, file="bakery.yaml")
    assert (bakery.line_of("street"), bakery.line_of("heater")) == (3, 4)


def test_line_of_a_fixed_relief_is_that_of_its_heater() -> None:
    assert read_system(BAKERY, file="bakery.yaml").line_of("heater/relief") == 4


def test_part_from_no_file_stands_in_line_0() -> None:
    assert System({}, ()).line_of("heater") == 0
    assert System({}, ()).record == Record()


def test_pipe_remembers_the_line_of_its_run() -> None:
    bakery = read_system(BAKERY, file="bakery.yaml")
    assert {pipe.name: pipe.line for pipe in bakery.pipes} == {"heater -> heater/relief": 0, "street -> heater": 10}


def test_equal_layouts_are_equal_systems() -> None:
    assert system("street -> tap.hot") == system("street -> tap.hot")
