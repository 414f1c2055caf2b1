"""Remedies as YAML: pasted into the file they were made for, they read back and keep their promise."""

from pathlib import Path

import pytest
import yaml
from conftest import layout
from curing import RELIEVED

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_of
from plumbnet.study.remedies.remedy_search import remedies
from plumbnet.study.remedies.scenario import as_scenario, scenario_text

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))


def pasted(text: str, scenario: str) -> str:
    """The text of a file with one scenario more."""
    if "\nscenarios:\n" not in text:
        return f"{text}\nscenarios:\n{scenario}"
    return text.replace("\nscenarios:\n", f"\nscenarios:\n{scenario}", 1)


def assert_kept(text: str) -> int:
    """Every remedy of a file, pasted into it, does what it promised; how many there are."""
    count = 0
    for heater, own in remedies(plumbnet.check(plumbnet.read_bytes(text.encode()))).items():
        for remedy in own:
            again = plumbnet.read_bytes(pasted(text, as_scenario(remedy, "a cure: yes")).encode())
            after = plumbnet.check(with_changes(again, again.scenarios["a cure: yes"].change))
            facts = next(one for one in after.heaters if one.name == heater)
            assert (facts.verdict, facts.settled_pa) == (remedy.verdict, remedy.settled_pa)
            assert again.scenarios["a cure: yes"].note == remedy.title
            count += 1
    return count


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_remedy_of_every_showcase_layout_reads_back(path: Path) -> None:
    assert_kept(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", ["yes", "null", "0815", "1e3", "Büro 2", "a" * 60])
def test_names_that_mean_something_else_in_yaml_are_quoted(name: str) -> None:
    text = layout("street -> cv -> heater -> tap.hot", heater=RELIEVED)
    parsed = yaml.safe_load(text)
    parsed["parts"] = {name if key == "heater" else key: value for key, value in parsed["parts"].items()}
    parsed["runs"] = [f"street -> cv -> {name} -> tap.hot"]
    assert assert_kept(yaml.safe_dump(parsed, allow_unicode=True, sort_keys=False)) > 0


def test_scenario_is_written_one_change_to_a_line() -> None:
    made = scenario_text(
        "cure", "Open it.", [change_of("open", "valve"), change_of("set", {"part": "tank", "state": "sound"})]
    )
    assert made == (
        "  cure:\n    note: Open it.\n    change:\n      - open: valve\n      - set: {part: tank, state: sound}\n"
    )


def test_quantities_stand_in_the_units_of_the_file() -> None:
    text = layout("street -> cv -> heater -> tap.hot", heater=RELIEVED).replace("units: us", "units: metric")
    (remedy,) = remedies(plumbnet.check(plumbnet.read_bytes(text.encode())))["heater"]
    written = as_scenario(remedy, "cure")
    assert "volume: 20 L" in written
    assert "precharge: 414 kPa" in written
    assert "psi" not in written
