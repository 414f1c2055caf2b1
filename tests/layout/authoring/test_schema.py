"""The JSON Schema: right in itself, takes what the reader takes, helps an editor to complete."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator
from schema_held import held, validator
from usual import field_names, required

from plumbnet.layout.authoring.schema import DIALECT, layout_schema
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.part import KINDS

ROOT = Path(__file__).parents[3]
SYSTEMS = sorted((ROOT / "systems").rglob("*.yaml"))
BEYOND = {
    "accept-of-no-part",
    "assembly-made-of-itself", "assembly-name-is-numbered", "assembly-port-unjoined", "assembly-port-unjoined-of-some",
    "assembly-port-with-two-pipes", "assembly-ports", "assembly-run-of-unequal-numbers", "assembly-run-to-no-part",
    "assembly-scenario", "assembly-too-deep", "assembly-too-large", "assembly-too-many-pipes", "assembly-unused",
    "acceptance-above-volume", "add-at-a-taken-port", "add-with-a-run-elsewhere", "add-with-an-unknown-name",
    "change-of-no-part", "changes-of-a-group-as-a-whole", "change-of-what-is-like-no-part", "close-what-is-no-valve",
    "device-passage-to-no-port",
    "device-ports-alike", "draw-what-is-no-fixture", "fail-in-no-known-way", "fail-what-cannot",
    "insert-a-name-that-is-there", "insert-a-name-that-is-none", "insert-at-no-port", "insert-between-a-run",
    "insert-next-to-no-part", "insert-what-has-no-outlet", "insert-where-no-pipe-is", "insert-where-two-pipes-are",
    "main-highest-on-the-wrong-side", "main-lowest-on-the-wrong-side",
    "many-more", "name-not-declared", "name-not-declared-in-folded-text", "name-not-declared-in-quotes",
    "open-what-is-no-valve", "part-in-no-run", "port-must-be-named", "port-taken-by-relief", "port-taken-twice",
    "port-unknown", "port-unlike-any", "remove-a-tee-of-three", "remove-no-part", "run-back-to-itself",
    "scenario-builds-on-itself",
    "run-through-a-dead-end", "run-through-a-tapping", "run-with-a-gap", "run-with-pipe-but-no-length",
    "run-with-unknown-tube", "set-a-kind-without-the-ports", "set-an-open-tank-to-a-valve", "set-inside-a-heater",
    "set-of-no-part", "set-ports-that-are-in-use", "setpoint-too-high",
    "well-cut-in-above-cut-out",
}  # fmt: skip
"""Faults that no schema sees: they are about other places in the file, or about sizes."""
BROKEN = {
    "bracket-left-open", "colon-in-text", "file-is-empty", "key-written-twice", "part-written-twice", "quote-left-open",
    "second-document", "tab-for-spaces", "tag", "name-of-a-part", "number-is-not-a-number", "hostile-text",
    "rules-twice-for-a-circuit",
}  # fmt: skip
"""Files that are no YAML, or mean something else to a reader of YAML 1.1."""


def mistakes(layout: object) -> list[str]:
    return [f"{error.json_path}: {error.message}" for error in validator().iter_errors(layout)]


def layout(part: object, *, run: object = "street -> it", **top: object) -> dict[str, object]:
    return {"plumbnet": 1, "parts": {"street": {"kind": "main", "pressure": 60}, "it": part}, "runs": [run], **top}


def usual(kind: str) -> dict[str, object]:
    return {"kind": kind, **required(kind)}


def everywhere(schema: object) -> Iterator[dict[str, Any]]:
    """Every schema inside the schema."""
    if isinstance(schema, dict):
        yield schema
        for inner in schema.values():
            yield from everywhere(inner)
    if isinstance(schema, list):
        for inner in schema:
            yield from everywhere(inner)


def test_schema_is_right_in_itself() -> None:
    assert held()["$schema"] == DIALECT
    Draft202012Validator.check_schema(held())


def test_every_reference_leads_somewhere() -> None:
    for name in {inner["$ref"] for inner in everywhere(held()) if "$ref" in inner}:
        found: Any = held()
        for step in name.removeprefix("#/").split("/"):
            found = found[step]
        assert isinstance(found, dict), name


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_showcase_layout_is_valid(path: Path) -> None:
    assert mistakes(yaml.safe_load(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_part_with_the_fields_it_requires_is_valid(kind: str) -> None:
    assert mistakes(layout(usual(kind))) == []


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_part_with_a_field_too_many_or_too_few_is_not(kind: str) -> None:
    assert mistakes(layout(usual(kind) | {"colour": "red"}))
    for name in usual(kind).keys() - {"kind"}:
        assert mistakes(layout({key: value for key, value in usual(kind).items() if key != name}))


def test_bare_kind_is_valid_where_no_field_is_required() -> None:
    for kind in KINDS:
        assert (mistakes(layout(kind)) == []) == (usual(kind) == {"kind": kind})


@pytest.mark.parametrize("case", sorted((ROOT / "tests" / "faults").glob("*.yaml")), ids=lambda case: case.stem)
def test_schema_refuses_what_the_reader_refuses_as_far_as_it_can_see(case: Path) -> None:
    if case.stem in BROKEN:
        return
    refused = bool(mistakes(yaml.safe_load(case.read_text(encoding="utf-8"))))
    assert refused == (case.stem not in BEYOND)


@pytest.mark.parametrize(
    "change",
    [
        {"close": "stop"},
        {"fail": "tank"},
        {"fail": {"part": "tank", "how": "waterlogged"}},
        {"insert": {"part": "cv", "kind": "check_valve", "opens": "1 psi", "between": ["a", "b.hot"]}},
        {"add": {"part": "t", "kind": "expansion_tank", "volume": "3 gal", "precharge": 60, "run": "a -> t"}},
        {"insert": {"part": "r/each/cv", "kind": "check_valve", "opens": ["1 psi", 2], "between": ["a", "b"]}},
        {"add": {"part": "r/each/t", "kind": "open_tank", "elevation": {"first": "9 ft", "step": 1}, "run": "a -> t"}},
        {"set": {"part": "r/each/tap", "elevation": ["1 ft", "2 ft"]}},
        {"set": {"part": "heater", "volume": "80 gal", "relief": {"pressure": "125 psi"}}},
        {"set": {"part": "heater", "relief": None}},
    ],
)
def test_change_as_the_reader_takes_it_is_valid(change: dict[str, object]) -> None:
    assert mistakes(layout("tee", scenarios={"s": {"change": [change]}})) == []


@pytest.mark.parametrize(
    "change",
    [
        {},
        {"close": None},
        {"close": "a", "open": "b"},
        {"insert": {"part": "cv", "kind": "check_valve"}},
        {"insert": {"part": "cv", "kind": "check_valve", "open": 3, "between": ["a", "b"]}},
        {"add": {"part": "t", "kind": "expansion_tank", "volume": "3 gal", "run": "a -> t"}},
        {"add": {"part": "t", "kind": "expansion_tnk", "run": "a -> t"}},
        {"add": {"part": "r/each/t", "kind": ["valve", "tee"], "run": "a -> t"}},
        {"insert": {"part": "r/each/cv", "kind": "check_valve", "opens": ["1 psi", "2 gal"], "between": ["a", "b"]}},
        {"set": {"part": "heater", "volum": "80 gal"}},
    ],
)
def test_change_that_the_reader_refuses_is_not(change: dict[str, object]) -> None:
    assert mistakes(layout("tee", scenarios={"s": {"change": [change]}}))


@pytest.mark.parametrize("value", [62, 62.5, "62 psi", "4.3 bar", "1/2 psi", "62"])
def test_quantity_is_a_number_or_a_text_with_its_unit(value: object) -> None:
    assert mistakes(layout({"kind": "main", "pressure": value})) == []


@pytest.mark.parametrize("value", ["62 gal", "much", True, None, [62], {"psi": 62}])
def test_anything_else_is_no_quantity(value: object) -> None:
    assert mistakes(layout({"kind": "main", "pressure": value}))


@pytest.mark.parametrize(("relief", "is_valid"), [("150 psi", True), (150, True), ("210 degF", False), (True, False)])
def test_relief_is_a_mapping_or_a_pressure(relief: object, *, is_valid: bool) -> None:
    heater = {"kind": "storage_heater", "volume": 50, "setpoint": 140}
    layout = {"plumbnet": 1, "parts": {"h": heater | {"relief": relief}}, "runs": ["h -> t"]}
    assert validator().is_valid(layout) is is_valid
    assert validator().is_valid({**layout, "parts": {"h": heater | {"relief": {"pressure": relief}}}}) is is_valid


def test_editor_can_complete_every_kind() -> None:
    part = held()["$defs"]["part"]["else"]["anyOf"]
    assert part[1]["properties"]["kind"]["enum"] == sorted(KINDS)
    assert set(part[0]["enum"]) < set(KINDS)


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_editor_is_led_to_the_fields_of_a_kind_with_their_descriptions(kind: str) -> None:
    choose = held()["$defs"]["part"]["else"]["anyOf"][1]["allOf"]
    (then,) = [one["then"] for one in choose if one["if"]["properties"]["kind"]["const"] == kind]
    schema = held()["$defs"][then["else"]["$ref"].removeprefix("#/$defs/")]
    assert schema["description"]
    names = field_names(kind)
    assert list(schema["properties"]) == ["kind", *names]
    for name in names:
        assert schema["properties"][name]["description"].endswith("."), name


@pytest.mark.parametrize("action", ["Insert", "Add"])
def test_editor_can_complete_the_part_that_a_change_brings_in(action: str) -> None:
    schema = held()["$defs"][action]
    assert schema["properties"]["kind"]["enum"] == sorted(KINDS)
    assert [one["if"]["properties"]["kind"]["const"] for one in schema["allOf"]] == sorted(KINDS)


def test_editor_can_complete_every_action_and_every_field_at_the_top() -> None:
    assert list(held()["$defs"]["Change"]["properties"]) == list(Change.actions)
    for inner in everywhere(held()):
        for name, field in inner.get("properties", {}).items():
            if isinstance(field, dict) and field.keys() != {"const"}:
                assert field.get("description") or "$ref" in field, name


def test_description_of_a_quantity_says_what_a_bare_number_means() -> None:
    tank = held()["$defs"]["kind expansion_tank"]["properties"]
    said = "a bare number is in psi or, where units are metric, in kPa, or metric-bar, in bar."
    assert tank["precharge"]["description"] == f"Air pressure with no water in the tank. A pressure; {said}"
    assert tank["rating"]["description"].endswith(said)


def test_no_title_that_nobody_wrote_stands_in_the_way() -> None:
    assert held()["title"] == "plumbnet layout, format 1"
    assert [inner["title"] for inner in everywhere(held()) if isinstance(inner.get("title"), str)] == [held()["title"]]


def test_schema_is_made_anew_each_time() -> None:
    assert layout_schema() == held()
    assert layout_schema() is not layout_schema()


@pytest.mark.parametrize("rules", ["general", {"water": "ipc-2021"}, {"water": "ipc-2021", "heating": "us-boiler"}])
def test_rules_are_one_name_or_one_for_each_circuit(rules: object) -> None:
    document = {"plumbnet": 1, "parts": {"m": "tee"}, "runs": [], "rules": rules}
    assert validator().is_valid(document)
    assert not validator().is_valid({**document, "rules": {"solar": "us-boiler"}})
    assert not validator().is_valid({**document, "rules": {"water": 7}})
