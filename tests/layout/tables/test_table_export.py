"""The import of an export is the same layout."""

from pathlib import Path

import pytest
from conftest import times
from hypothesis import given
from oracles.random_layouts import Layout, layouts

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model import System
from plumbnet.layout.rewriting.same_layout import first_difference
from plumbnet.layout.tables.table_export import left_out_of_tables, tables_of, template_tables
from plumbnet.layout.tables.table_import import layout_of
from plumbnet.layout.tables.table_reading import read_table

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))


def returned(system: System, *, semicolons: bool) -> System:
    tables = tables_of(system, semicolons=semicolons)
    made = layout_of([read_table(data, name) for name, data in tables.items()])
    return read_system(made.text.encode(), file="tables")


def said_of_whole(system: System) -> list[object]:
    told = [system.title, system.units, system.rules, system.job, system.accept, system.tank_sizes_m3, system.scenarios]
    return [*told, list(system.parts)]


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_showcase_comes_back_as_it_was(path: Path) -> None:
    system = read_system(path.read_bytes(), file=path.name)
    for semicolons in (False, True):
        back = returned(system, semicolons=semicolons)
        assert not first_difference(system, back)
        assert said_of_whole(system) == said_of_whole(back)


@times(0.05)
@given(layouts())
def test_every_random_layout_comes_back_as_it_was(layout: Layout) -> None:
    for semicolons in (False, True):
        assert not first_difference(layout.system, returned(layout.system, semicolons=semicolons))


HOUSE = """\
plumbnet: 1
title: "=1+1"
rules: {water: ipc-2021}
job: {number: "007", author: J. Marsh}
tank_sizes: [2 gal, 5.5 gal]
parts:
  street: {kind: main, pressure: 62 psi}
  group: {kind: safety_group, set: 7 bar}
  heater: {kind: storage_heater, volume: 50, setpoint: 140.5, relief: {pressure: 150 psi, temperature: 210 degF}}
  tank: {kind: expansion_tank, volume: 4.5 gal, precharge: 62 psi, rating: 150 psi}
  split: tee
  odd: {kind: device, ports: [in, out], passages: [{one_way: [in, out]}]}
  sink: {kind: fixture, elevation: -9 ft}
runs:
  - {path: street -> odd -> group -> split -> heater -> sink.hot, pipe: copper-L 3/4 in, length: 30 ft}
  - split -> tank
accept: [{finding: trapped-expansion, part: heater, reason: "seen, 3 June"}]
"""


def house() -> System:
    return read_system(HOUSE.encode(), file="house.yaml")


def test_groups_nested_values_and_what_is_said_of_the_whole_come_back() -> None:
    for semicolons in (False, True):
        back = returned(house(), semicolons=semicolons)
        assert not first_difference(house(), back)
        assert said_of_whole(house()) == said_of_whole(back)


def test_tables_read_well_in_a_spreadsheet() -> None:
    tables = {name: data.decode("utf-8-sig").splitlines() for name, data in tables_of(house()).items()}
    assert list(tables) == ["parts.csv", "pipes.csv", "layout.csv", "tanks.csv"]
    assert tables["parts.csv"][0].startswith("name,kind,elevation,rating,volume,")
    assert tables["pipes.csv"][:2] == [
        "from,to,pipe,length,volume,contents", "street,odd,copper-L 3/4 in,6 ft,,0.150852 gal",
    ]  # fmt: skip
    assert tables["layout.csv"][:5] == ["key,value", "title,'=1+1", "units,us", "rules,", "rules.water,ipc-2021"]
    assert tables["tanks.csv"] == [
        "tank,volume,precharge,acceptance,rating,elevation,connected_at", "tank,4.5 gal,62 psi,,150 psi,0 ft,split",
    ]  # fmt: skip


def test_decimal_commas_come_with_semicolons() -> None:
    tables = tables_of(house(), semicolons=True)
    assert "tank;4,5 gal;62 psi;;150 psi;0 ft;split" in tables["tanks.csv"].decode("utf-8-sig")


def test_template_has_every_column_and_no_row() -> None:
    tables = {name: data.decode("utf-8-sig").splitlines() for name, data in template_tables().items()}
    assert len(tables["parts.csv"]) == len(tables["pipes.csv"]) == 1
    assert "relief.pressure" in tables["parts.csv"][0].split(",")


def test_scenario_that_cannot_be_made_is_said_to_be_left_out() -> None:
    faulty = HOUSE + "scenarios: {gone: {note: n, change: [{close: nothing}]}}\n"
    said = left_out_of_tables(read_system(faulty.encode(), file="house.yaml"))
    assert said == ("the scenario gone cannot be made, and is left out",)


def test_assemblies_are_written_out_and_that_is_said() -> None:
    parts = "{street: {kind: main, pressure: 60 psi}, t: tee, taps: {kind: fixture, times: 2}}"
    system = read_system(f"plumbnet: 1\nparts: {parts}\nruns: [street -> t -> taps/each.cold]".encode(), file="f")
    assert left_out_of_tables(system) == (
        "the assemblies are left out, and their parts written out by full names, which import does not take",
    )
    assert b"taps/2,fixture" in tables_of(system)["parts.csv"]
