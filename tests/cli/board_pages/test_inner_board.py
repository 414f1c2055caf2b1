"""The option that puts a board into a page to hand over."""

from pathlib import Path

import pytest
from conftest import layout
from running import Write, run

HOUSE = layout("street -> valve -> heater -> tap.hot\nheater.relief -> relief")


@pytest.mark.parametrize("command", ["report", "review"])
def test_board_stands_in_the_page_and_its_states_are_told(command: str, write: Write) -> None:
    write("house.yaml", HOUSE)
    result = run(command, "house.yaml", "-o", "house.html", "--board")
    assert "house" in result.stdout
    assert "It holds " in result.stdout
    assert " states: all combinations of valve" in result.stdout
    assert Path("house.html").read_text(encoding="utf-8").count("<iframe") == 1


@pytest.mark.parametrize("arguments", [("report", "-o", "house.pdf"), ("review",)])
def test_board_elsewhere_than_in_html_is_refused_in_a_sentence(arguments: tuple[str, ...], write: Write) -> None:
    write("house.yaml", HOUSE)
    command, *others = arguments
    result = run(command, "house.yaml", *others, "--board")
    assert result.exit_code == 2
    assert "--board is about a page in HTML; name a file with -o that ends in .html" in result.output
    assert not Path("house.pdf").exists()
