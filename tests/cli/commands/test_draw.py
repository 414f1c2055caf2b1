"""The command `draw`."""

from pathlib import Path

import pytest
from conftest import layout
from running import HOSTILE, OPEN, TRAPPED, Write, run
from tall_buildings import tower

FIRST_BYTES = {"svg": b"<?xml", "pdf": b"%PDF-", "png": b"\x89PNG"}
SCENARIO = """
scenarios:
  closed: {note: n, change: [{close: valve}]}
"""


@pytest.mark.parametrize("form", FIRST_BYTES)
def test_drawing_is_written_in_the_form_its_name_says(write: Write, form: str) -> None:
    write("house.yaml", TRAPPED)
    result = run("draw", "house.yaml", "-o", f"out.{form}")
    assert (result.output, result.exit_code) == ("", 1)
    assert Path(f"out.{form}").read_bytes().startswith(FIRST_BYTES[form])


def test_open_house_ends_with_status_0(write: Write) -> None:
    write("house.yaml", OPEN)
    assert run("draw", "house.yaml", "-o", "out.svg").exit_code == 0


def test_other_ending_is_one_calm_sentence(write: Write) -> None:
    write("house.yaml", OPEN)
    result = run("draw", "house.yaml", "-o", "out.jpg")
    wanted = '"out.jpg" does not say how to write it; let its name end in .svg, .pdf, .png or .dxf\n'
    assert (result.output, result.exit_code) == (wanted, 2)


def test_date_is_printed_as_it_is_given(write: Write) -> None:
    write("house.yaml", OPEN)
    run("draw", "house.yaml", "-o", "out.svg", "--date", "St. Andrew's Day")
    assert "St. Andrew's Day" in Path("out.svg").read_text(encoding="utf-8")


def test_scenario_is_drawn_and_named(write: Write) -> None:
    write("house.yaml", layout("street -> valve -> heater -> tap.hot") + SCENARIO)
    run("draw", "house.yaml", "-o", "plain.svg")
    run("draw", "house.yaml", "-o", "shut.svg", "--scenario", "closed")
    plain, shut = (Path(name).read_text(encoding="utf-8") for name in ("plain.svg", "shut.svg"))
    assert "shut valve" in shut
    assert ">closed<" in shut
    assert "shut valve" not in plain


def test_theme_rules_and_units_are_taken(write: Write) -> None:
    write("house.yaml", TRAPPED)
    run("draw", "house.yaml", "-o", "dark.svg", "--theme", "dark", "--rules", "general", "--units", "metric")
    text = Path("dark.svg").read_text(encoding="utf-8")
    assert "#14181d" in text
    assert "kPa" in text


def test_hostile_file_is_drawn_as_text(write: Write) -> None:
    write("house.yaml", HOSTILE + TRAPPED)
    assert run("draw", "house.yaml", "-o", "out.svg").exit_code == 1
    assert b"\x1b" not in Path("out.svg").read_bytes()


def test_file_that_cannot_be_written_is_one_calm_sentence(write: Write) -> None:
    write("house.yaml", OPEN)
    result = run("draw", "house.yaml", "-o", "no/such/folder/out.svg")
    assert result.exit_code == 2
    assert "cannot be written" in result.output


def test_tall_building_is_a_riser_diagram_unless_none_is_wanted(write: Write) -> None:
    write("tower.yaml", tower(storeys=8))
    drawn = {}
    for wish in ((), ("--riser",), ("--no-riser",)):
        run("draw", "tower.yaml", "-o", "out.svg", *wish)
        drawn[wish] = Path("out.svg").read_text(encoding="utf-8")
    assert drawn[()] == drawn["--riser",]
    assert "A  × 16" in drawn[()]
    assert "flat7b" not in drawn[()]
    assert "flat7b" in drawn["--no-riser",]


def test_house_is_drawn_in_layers_whatever_is_wanted(write: Write) -> None:
    write("house.yaml", OPEN)
    drawn = []
    for wish in ((), ("--riser",), ("--no-riser",)):
        run("draw", "house.yaml", "-o", "out.svg", *wish)
        drawn.append(Path("out.svg").read_bytes())
    assert drawn[0] == drawn[1] == drawn[2]


def test_what_nobody_could_read_is_one_calm_sentence_with_what_can_be_drawn(
    write: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("plumbnet.drawing.ink.drawing_limit.MOST_PARTS_DRAWN", 60)
    write("tower.yaml", tower(storeys=14, shafts=8))
    result = run("draw", "tower.yaml", "-o", "out.svg", "--no-riser")
    assert result.exit_code == 2
    assert result.output.startswith("tower.yaml: no drawing is made of more than 60 parts or 4,000 pipes")
    assert result.output.endswith("draw it with --riser\n")
    assert not Path("out.svg").exists()
    run("draw", "tower.yaml", "-o", "out.svg")
    assert Path("out.svg").exists()


def test_riser_diagram_that_cannot_be_made_is_told_in_a_sentence(write: Write) -> None:
    write("house.yaml", OPEN)
    asked = run("draw", "house.yaml", "-o", "out.svg", "--riser")
    assert asked.stderr.startswith("house.yaml is drawn as a plain schematic: a riser diagram wants three levels, ")
    assert (asked.stderr.count("\n"), asked.exit_code) == (1, 0)
    assert run("draw", "house.yaml", "-o", "plain.svg").stderr == ""
    assert Path("out.svg").read_bytes() == Path("plain.svg").read_bytes()
