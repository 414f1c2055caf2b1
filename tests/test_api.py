"""What other programs call."""

import gc
from pathlib import Path

import pytest
from conftest import layout

import plumbnet
from plumbnet.layout.fault import LayoutError
from plumbnet.rules.profile import UnknownProfile

HOUSE = layout("street -> cv -> heater -> tap.hot")


def test_layout_is_read_from_a_path_or_from_bytes(tmp_path: Path) -> None:
    file = tmp_path / "house.yaml"
    file.write_text(HOUSE, encoding="utf-8")
    from_file, from_bytes = plumbnet.read(file), plumbnet.read_bytes(HOUSE.encode(), file="house.yaml")
    assert from_file.parts == from_bytes.parts
    assert from_file.record.sha256 == from_bytes.record.sha256
    assert (from_file.record.file, from_bytes.record.file) == (str(file), "house.yaml")
    assert plumbnet.read(str(file)) == from_file


def test_file_that_is_not_there_is_an_error_of_the_system(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        plumbnet.read(tmp_path / "none.yaml")


def test_faulty_layout_names_the_file_it_is_given() -> None:
    with pytest.raises(LayoutError, match=r"^layout: there is nothing in this file$"):
        plumbnet.read_bytes(b"")
    with pytest.raises(LayoutError, match=r"^bakery: there is nothing in this file$"):
        plumbnet.read_bytes(b"", file="bakery")


def test_general_practice_holds_where_no_rules_are_named() -> None:
    assert plumbnet.check(plumbnet.read_bytes(HOUSE.encode())).profile.profile == "general"


def test_rules_named_in_the_call_go_before_those_of_the_file() -> None:
    system = plumbnet.read_bytes(HOUSE.replace("units", "rules: nowhere\nunits").encode())
    assert plumbnet.check(system, rules="general").profile.profile == "general"


def test_unknown_rules_in_the_call_are_an_unknown_profile() -> None:
    with pytest.raises(UnknownProfile, match='no rule profile is called "genral": did you mean "general"'):
        plumbnet.check(plumbnet.read_bytes(HOUSE.encode()), rules="genral")


def test_unknown_rules_in_the_file_are_a_fault_at_their_place() -> None:
    text = "plumbnet: 1\nrules: genral\nparts: {m: {kind: main, pressure: 60}, t: tee}\nruns: [m -> t]\n"
    with pytest.raises(LayoutError) as caught:
        plumbnet.check(plumbnet.read_bytes(text.encode(), file="f.yaml"))
    assert str(caught.value) == (
        'f.yaml:2:8: no rule profile is called "genral": did you mean "general"?\n'
        "  2 | rules: genral\n"
        "    |        ^~~~~~"
    )


def test_sentences_of_a_report_take_the_units_of_the_file_or_of_the_call() -> None:
    system = plumbnet.read_bytes(HOUSE.encode())
    assert plumbnet.check(system).facts.units == "us"
    assert plumbnet.check(system, units="metric").facts.units == "metric"


def test_names_of_the_package_are_those_it_offers() -> None:
    assert {"check", "read", "read_bytes"} <= set(plumbnet.__all__)
    assert all(callable(getattr(plumbnet, name)) for name in plumbnet.__all__)


@pytest.mark.parametrize("at_work", [True, False])
def test_collector_is_left_as_it_was_found(*, at_work: bool) -> None:
    before = gc.isenabled()
    try:
        (gc.enable if at_work else gc.disable)()
        plumbnet.check(plumbnet.read_bytes(HOUSE.encode()))
        assert gc.isenabled() is at_work
        with pytest.raises(LayoutError):
            plumbnet.read_bytes(b"")
        assert gc.isenabled() is at_work
    finally:
        (gc.enable if before else gc.disable)()
