"""Quantities, names and changes as an author writes them."""

import pytest
from conftest import PSI
from curing import house

from plumbnet.layout.edits import change_text as written
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.runs import NAME
from plumbnet.layout.model.system import System
from plumbnet.layout.units.measure import parse_measure
from plumbnet.layout.units.units import VOLUME


def test_quantities_stand_in_the_units_of_the_file() -> None:
    us, metric = System({}, ()), System({}, (), units="metric")
    assert written.pressure_text(us, 60 * PSI) == "60 psi"
    assert written.pressure_text(metric, 60 * PSI) == "414 kPa"
    assert written.volume_text(us, 0.01892705892) == "5 gal"
    assert written.volume_text(metric, 0.012) == "12 L"


@pytest.mark.parametrize("volume_m3", [0.0179, 0.0173456, 1.23456])
def test_size_that_an_author_gives_in_other_units_is_not_rounded_to_be_seen(volume_m3: float) -> None:
    text = written.volume_text(System({}, ()), volume_m3)
    assert parse_measure(text, VOLUME, "us") == pytest.approx(volume_m3, rel=1e-5)


def test_height_at_datum_is_not_written() -> None:
    assert written.height_text(System({}, ()), 0.0) == {}
    assert written.height_text(System({}, ()), -2.4384) == {"elevation": "-8 ft"}


def test_new_name_is_free_and_no_longer_than_a_name_may_be() -> None:
    layout = house()
    assert written.new_name(layout, "tee", "tank") == "tee-tank"
    long = written.new_name(layout, "a" * 60, "tank", taken=("a" * 55 + "-tank",))
    assert long == "a" * 53 + "-tank-2"
    assert NAME.fullmatch(long)


def test_change_is_written_back_as_it_was_given() -> None:
    given: dict[str, object] = {"part": "tank", "kind": "expansion_tank", "run": "tee -> tank", "volume": "5 gal"}
    assert written.change_fields(written.change_of("add", given)) == {"add": given}
    assert written.change_fields(written.change_of("open", "valve")) == {"open": "valve"}


def test_names_and_heights_inside_an_instance_count_from_there() -> None:
    text = b"""
plumbnet: 1
assemblies: {room: {ports: [c], parts: {c: tee, tap: {kind: fixture, elevation: 3 ft}}, runs: [c -> tap.cold]}}
parts: {street: {kind: main, pressure: 60 psi}, t: {kind: tee, times: 2}, r: {use: room, times: 2, elevation: 10 ft}}
runs: [street -> t/1 -> t/2, t/each -> r/each.c]
"""
    system = read_system(text.strip(), file="f")
    assert written.new_name(system, "r/1/tap", "tank", beside=("r/1/c",)) == "r/1/tap-tank"
    assert written.new_name(system, "r/1/tap", "tank", beside=("t/1",)) == "r-1-tap-tank"
    assert written.new_name(system, "t/1", "tank") == "t-1-tank"
    assert written.height_text(system, 3.6576, "r/1/tank") == {"elevation": "2 ft"}
    assert written.height_text(system, 3.048, "r/1/tank") == {}
    assert written.fields_inside(system, "r/1/tap", system.written["r/1/tap"])["elevation"] == "3 ft"
    assert written.fields_inside(system, "t/1", {"elevation": "13 ft"}) == {"elevation": "13 ft"}
