"""A layout in one of its scenarios, whichever command asks for it."""

from pathlib import Path

import pytest
from conftest import layout
from running import Write, run

OUT = {"draw": "out.svg", "report": "out.html"}
SCENARIO = """
scenarios:
  closed: {note: n, change: [{close: valve}]}
  high: {note: n, change: [{set: {part: heater, elevation: 900 ft}}]}
"""


@pytest.mark.parametrize("command", OUT)
def test_scenario_that_is_not_there_or_cannot_be_reckoned_is_one_calm_sentence(write: Write, command: str) -> None:
    write("house.yaml", layout("street -> valve -> heater -> tap.hot") + SCENARIO)
    result = run(command, "house.yaml", "-o", OUT[command], "--scenario", "closd")
    assert result.exit_code == 2
    assert 'no scenario is called "closd": did you mean "closed"?' in result.output
    result = run(command, "house.yaml", "-o", OUT[command], "--scenario", "high")
    assert result.exit_code == 2
    assert 'with the scenario "high" made nothing can be computed: heater: its piping reaches higher' in result.output
    assert not Path(OUT[command]).exists()
