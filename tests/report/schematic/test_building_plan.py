from dataclasses import replace

import pytest
from tall_buildings import altered, tall, tower

import plumbnet
from plumbnet.report.schematic.building_plan import building_facts

TEXT = tower()


def likeness(text: str, name: str) -> str:
    building = tall(text).schematic.building
    assert building is not None
    return building.parts[name].likeness


def test_heights_are_those_that_the_author_wrote() -> None:
    facts = building_facts(plumbnet.check(plumbnet.read_bytes(TEXT.encode())))
    assert facts.parts["heater"].height_m is None
    assert facts.parts["h1a"].height_m == pytest.approx(3.048)


def test_equipment_and_uses_are_asked_of_the_parts() -> None:
    parts = building_facts(tall(TEXT).report).parts
    assert {name for name, one in parts.items() if one.is_equipment} == {"street", "tank", "heater", "pump"}
    assert parts["street"].is_source
    assert parts["heater"].is_head
    assert not parts["heater"].is_source
    assert parts["flat1a"].is_use
    assert parts["flat1a"].is_divided


def test_what_a_finding_names_has_a_likeness_of_its_own() -> None:
    report = tall(TEXT).report
    (finding, *_) = report.findings
    named = replace(finding, parts=("flat3a",))
    parts = building_facts(replace(report, findings=(named,))).parts
    assert parts["flat3a"].likeness != parts["flat2a"].likeness
    assert parts["flat4a"].likeness == parts["flat2a"].likeness


def test_flats_of_two_pressure_zones_are_not_alike() -> None:
    behind = altered(
        TEXT,
        ("runs:\n", "  prv: {kind: pressure_reducer, set: 40 psi}\nruns:\n"),
        ("  - split -> c1b", "  - split -> prv -> c1b"),
    )
    assert likeness(TEXT, "flat2a") == likeness(TEXT, "flat2b")
    assert likeness(behind, "flat2a") != likeness(behind, "flat2b")


def test_the_part_that_sets_a_limit_is_known() -> None:
    building = tall(TEXT)
    facts = building_facts(building.report)
    at = {heater.limit_at for heater in building.report.heaters} - {""}
    assert at
    assert {name for name, one in facts.parts.items() if one.is_limit} == at
