from conftest import system

from plumbnet.layout.file.loader import read_system
from plumbnet.report.text.layout_text import fields_in_words, parts_in_words, runs_in_words


def test_parts_are_told_with_their_fields() -> None:
    house = system(
        "street -> meter -> tee -> heater -> tap.hot", meter="check: true", heater="relief: {pressure: 150 psi}"
    )
    assert list(parts_in_words(house)) == [
        ("street", "main", "pressure 60 psi"),
        ("meter", "meter", "check"),
        ("tee", "tee", ""),
        ("heater", "storage heater", "volume 50 gal, setpoint 140 degF, input 40000 Btu/h, relief (pressure 150 psi)"),
        ("tap", "fixture", ""),
    ]


def test_parts_that_are_alike_stand_in_one_row() -> None:
    house = system("street -> tee -> cv -> tee2 -> tap.hot\ntee -> tap2.hot")
    assert list(parts_in_words(house))[1:] == [
        ("tee, tee2", "tee", ""),
        ("cv", "check valve", ""),
        ("tap, tap2", "fixture", ""),
    ]


def test_what_is_not_there_is_said() -> None:
    assert fields_in_words({"checks": False}) == "no checks"


def test_runs_are_told_as_they_were_written() -> None:
    house = system("street -> tee -> heater -> tap.hot\ntee -> tap.cold", heater="relief: {pressure: 150 psi}")
    assert list(runs_in_words(house)) == ["street → tee → heater → tap.hot", "tee → tap.cold"]


def test_run_is_told_with_its_pipe_and_its_whole_length() -> None:
    text = (
        "plumbnet: 1\nunits: metric\nparts: {street: {kind: main, pressure: 400}, a: tee, tap: fixture}\n"
        "runs: [{path: street -> a -> tap.cold, pipe: copper-B 22 mm, length: 12 m}]\n"
    )
    assert list(runs_in_words(read_system(text.encode(), file="f"))) == [
        "street → a → tap.cold, 12 m of copper-B 22 mm"
    ]


def test_odd_ports_are_named() -> None:
    house = system("street -> indirect -> tap.hot\nindirect.coil_out -> boiler -> pump -> indirect.coil_in")
    assert list(runs_in_words(house))[1] == "indirect.coil_out → boiler → pump → indirect.coil_in"
