import pytest

import plumbnet
from plumbnet.layout.authoring.starters import starter, starter_names
from plumbnet.layout.edits.apply import with_changes
from plumbnet.rules.facts.verdict_words import Verdict

NAMES = starter_names()


def test_there_is_a_house_a_circulation_and_a_boiler() -> None:
    assert NAMES == ("boiler", "house", "recirculation")


@pytest.mark.parametrize("name", NAMES)
def test_starter_is_checked_without_a_finding(name: str) -> None:
    report = plumbnet.check(plumbnet.read_bytes(starter(name), file=f"{name}.yaml"))
    assert [one.name for one in report.findings] == []
    assert {heater.verdict for heater in report.heaters} == {Verdict.CONTROLLED}


@pytest.mark.parametrize("name", NAMES)
def test_its_scenarios_can_be_tried_and_one_of_them_ends_badly(name: str) -> None:
    system = plumbnet.read_bytes(starter(name))
    verdicts = [
        heater.verdict
        for scenario in system.scenarios.values()
        for heater in plumbnet.check(with_changes(system, scenario.change)).heaters
    ]
    assert Verdict.TRAPPED in verdicts


@pytest.mark.parametrize("name", NAMES)
def test_file_explains_itself_as_it_goes(name: str) -> None:
    lines = starter(name).decode().splitlines()
    assert sum("#" in line for line in lines) >= len(lines) / 4
    assert lines[0].startswith("# yaml-language-server: ")
    assert lines[0].endswith("/plumbnet.schema.json")


def test_unknown_starter_is_no_file() -> None:
    with pytest.raises(KeyError):
        starter("../profiles/general")
