"""The schema of assemblies: it takes what the reader takes, and offers lists only where a value may differ."""

import pytest
from schema_held import held, validator

ROOM = {"ports": ["hot"], "parts": {"hot": "tee", "reducer": "pressure_reducer"}, "runs": ["hot -> reducer"]}


def is_valid(part: object, run: object = "a -> b", **assembly: object) -> bool:
    room = {**ROOM, **assembly}
    whole = {"plumbnet": 1, "assemblies": {"room": room}, "parts": {"a": "tee", "it": part}, "runs": [run]}
    return validator().is_valid(whole)


@pytest.mark.parametrize(
    "part",
    [
        {"use": "room"},
        {"use": "room", "times": 20, "elevation": {"first": "10 ft", "step": 3}},
        {"use": "room", "times": "101-120", "elevation": ["1 ft", 2]},
        {"use": "room", "times": ["a", "1-3"], "each": {"reducer": {"set": ["60 psi", "90 psi"]}}},
        {"use": "room", "each": {"floor": {"each": {"tap": {"drawing": True}}}}},
        {"kind": "valve", "times": 2, "state": ["open", "shut"]},
        {"kind": "storage_heater", "times": 2, "volume": "4 gal", "setpoint": 120, "relief": {"pressure": [100, 150]}},
    ],
)
def test_what_the_reader_takes_is_valid(part: object) -> None:
    assert is_valid(part)


@pytest.mark.parametrize(
    "part",
    [
        {"use": "room", "timse": 20},
        {"use": "room", "times": 0},
        {"use": "room", "times": 3, "elevation": {"first": "10 ft", "stp": "3 ft"}},
        {"use": "room", "kind": "tee"},
        {"use": "room", "each": {"reducer": {"sett": "60 psi"}}},
        {"kind": "valve", "state": ["open", "shut"]},
        {"kind": "valve", "times": 2, "state": {"first": "open", "step": "shut"}},
        {"kind": "pressure_reducer", "times": 2},
    ],
)
def test_what_the_reader_refuses_is_not(part: object) -> None:
    assert not is_valid(part)


def test_a_run_may_differ_where_it_names_many() -> None:
    assert is_valid("tee", {"path": "a -> it/each", "length": ["1 ft", "2 ft"]})
    assert not is_valid("tee", {"path": "a -> it", "length": ["1 ft", "2 ft"]})


def test_an_assembly_has_ports_and_no_keys_of_its_own_making() -> None:
    assert is_valid("tee", ports={"hot": "reducer.in"}, note="a room", change=[{"close": "stop"}])
    assert not is_valid("tee", ports=[])
    assert not is_valid("tee", rum=["a -> b"])
    assert not is_valid("tee", change=[{"fail": "tank"}])


def test_fields_of_any_kind_are_offered_in_each() -> None:
    offered = held()["$defs"]["values of a part inside"]["properties"]
    assert {"volume", "set", "checks", "precharge", "each"} <= set(offered)
    assert "kind" not in offered
