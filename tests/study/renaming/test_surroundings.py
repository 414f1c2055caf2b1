"""Parts with the pipes that join them."""

from conftest import system

from plumbnet.layout.model.system import End
from plumbnet.study.renaming.surroundings import Joined, own_parts, surroundings

HOUSE = system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")


def test_what_comes_fixed_to_a_part_has_no_name_of_its_own() -> None:
    assert "heater/relief" in HOUSE.parts
    assert list(own_parts(HOUSE)) == ["street", "cv", "heater", "tap"]


def test_pipe_is_seen_from_both_of_its_ends() -> None:
    pipes = surroundings(HOUSE).pipes
    assert pipes["cv"] == (Joined("in", End("street", "out")), Joined("out", End("heater", "cold")))
    assert pipes["tap"] == (Joined("hot", End("heater", "hot")),)
    assert all(one.far.part != "heater/relief" for one in pipes["heater"])
