import pytest

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.rules import example_layouts
from plumbnet.rules.example_layouts import Example

HOUSES = {name: each for name, each in vars(example_layouts).items() if isinstance(each, Example)}
LAYOUT = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater:  # <- sealed-heater
    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}
  tap: fixture
runs:
  - street -> heater
  - heater -> tap.hot
""")


@pytest.mark.parametrize("name", HOUSES)
def test_house_is_sound_but_for_the_closed_one_without_a_tank(name: str) -> None:
    findings = plumbnet.check(read_system(HOUSES[name].encode(), file="house.yaml")).findings
    assert [one.name for one in findings] == (["trapped-expansion"] if name == "CLOSED_HOUSE" else [])


def test_line_stands_for_the_one_of_its_key_with_all_that_hangs_under_it() -> None:
    mended = LAYOUT.altered("  heater: boiler")
    assert mended == LAYOUT.replace(
        "heater:  # <- sealed-heater\n    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}", "heater: boiler"
    )


def test_new_lines_stand_behind_the_line_above_them_and_at_the_top_behind_the_version() -> None:
    mended = LAYOUT.altered("rules: upc-2024\n  heater: ...\n  meter: meter\n  split: tee")
    assert mended.splitlines() == [
        "plumbnet: 1",
        "rules: upc-2024",
        "parts:",
        "  street: {kind: main, pressure: 60 psi}",
        "  heater:",
        "    {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}",
        "  meter: meter",
        "  split: tee",
        "  tap: fixture",
        "runs:",
        "  - street -> heater",
        "  - heater -> tap.hot",
    ]


def test_runs_stand_for_all_the_runs() -> None:
    assert LAYOUT.altered("runs:\n  - street -> tap.hot").endswith("  tap: fixture\nruns:\n  - street -> tap.hot\n")


def test_marks_go_but_for_those_of_the_lines_given() -> None:
    assert "#" not in LAYOUT.altered("  tap: fixture")
    assert LAYOUT.altered("  tap: fixture  # <- static-above-limit").count("# <- static-above-limit") == 1


def test_example_is_not_changed_by_what_is_altered() -> None:
    before = str(LAYOUT)
    LAYOUT.altered("  tap: sink")
    assert before == LAYOUT
