"""Pipes as the runs that an author would write."""

from conftest import system

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model import System
from plumbnet.layout.rewriting.run_texts import OldPath, Wholes, old_path, path_text, pipe_fields, segments

PIPED = """\
plumbnet: 1
parts: {street: {kind: main, pressure: 60 psi}, tap: fixture}
runs: [{path: street -> tap.cold, pipe: copper-L 3/4 in, length: 30 ft}]
"""
NOTHING_OLD = OldPath({}, {})


def laid() -> System:
    heater = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF"
    return system("street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold", heater=heater)


def test_run_names_a_port_only_where_it_is_not_the_usual_one() -> None:
    found = laid()
    whole = Wholes(found)
    first, second = found.pipes[:4], found.pipes[4:]
    assert path_text(whole, first, NOTHING_OLD) == "street -> meter -> tee -> heater -> tap.hot"
    assert path_text(whole, second, NOTHING_OLD) == "tee -> tap.cold"


def test_what_the_author_wrote_stays() -> None:
    found = laid()
    whole = Wholes(found)
    path = "street.out ->  meter->tee.joint -> heater -> tap.hot"
    old = old_path(whole, path, found.pipes[:4])
    assert path_text(whole, found.pipes[:4], old) == path
    assert path_text(whole, found.pipes[1:4], old) == "meter->tee.joint -> heater -> tap.hot"


def test_run_is_cut_where_it_cannot_pass_on() -> None:
    found = laid()
    whole = Wholes(found)
    assert [len(each) for each in segments(whole, [found.pipes[0], found.pipes[2], found.pipes[3]])] == [1, 2]


def test_run_says_what_is_known_of_its_pipe() -> None:
    found = read_system(PIPED.encode(), file="shed.yaml")
    assert pipe_fields(found, found.pipes) == {"pipe": "copper-L 3/4 in", "length": "30 ft"}
    assert pipe_fields(laid(), laid().pipes) == {}
