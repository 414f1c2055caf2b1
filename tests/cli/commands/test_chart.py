"""The command `chart`."""

from pathlib import Path

import pytest
from conftest import layout
from running import HOSTILE, OPEN, TRAPPED, Write, run

FIRST_BYTES = {"svg": b"<?xml", "pdf": b"%PDF-", "png": b"\x89PNG"}


@pytest.mark.parametrize("of", ["ladder", "tank"])
@pytest.mark.parametrize("form", FIRST_BYTES)
def test_chart_is_written_in_the_form_its_name_says(write: Write, of: str, form: str) -> None:
    write("house.yaml", TRAPPED)
    result = run("chart", "house.yaml", "--of", of, "-o", f"out.{form}")
    assert (result.output, result.exit_code) == ("", 1)
    assert Path(f"out.{form}").read_bytes().startswith(FIRST_BYTES[form])


def test_warm_up_of_a_heater_without_input_is_refused_in_a_sentence(write: Write) -> None:
    write("house.yaml", layout("street -> cv -> indirect -> tap.hot"))
    result = run("chart", "house.yaml", "--of", "warmup", "-o", "out.svg")
    assert result.exit_code == 2
    assert "lacks an input" in result.output
    assert not Path("out.svg").exists()


def test_open_house_ends_with_status_0(write: Write) -> None:
    write("house.yaml", OPEN)
    assert run("chart", "house.yaml", "--of", "ladder", "-o", "out.svg").exit_code == 0


def test_of_several_heaters_one_must_be_named(write: Write) -> None:
    write("two.yaml", layout("street -> tee -> cv -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"))
    result = run("chart", "two.yaml", "--of", "tank", "-o", "out.svg")
    assert result.exit_code == 2
    assert result.output.startswith("the layout has 2 heaters")
    assert result.output.endswith("heater1 or heater2\n")
    assert run("chart", "two.yaml", "--of", "tank", "-o", "out.svg", "--heater", "heater1").exit_code == 1
    unknown = run("chart", "two.yaml", "--of", "tank", "-o", "out.svg", "--heater", "heater")
    assert 'did you mean "heater' in unknown.output


def test_layout_without_heaters_has_no_tank_chart(write: Write) -> None:
    write("pipe.yaml", layout("street -> tap.cold"))
    result = run("chart", "pipe.yaml", "--of", "tank", "-o", "out.svg")
    assert (result.output, result.exit_code) == ("nothing in this layout heats water\n", 2)


def test_hostile_titles_are_drawn_as_text(write: Write) -> None:
    write("house.yaml", HOSTILE + TRAPPED)
    assert run("chart", "house.yaml", "--of", "ladder", "-o", "out.svg").exit_code == 1
    assert b"\x1b" not in Path("out.svg").read_bytes()
