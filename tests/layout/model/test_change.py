"""Changes as scenarios write them."""

import pytest
from pydantic import ValidationError

from plumbnet.layout.model.change import Add, Change, Fail, Insert, Scenario, SetValues


def test_action_is_the_one_that_is_written() -> None:
    for action in Change.actions:
        if action not in {"insert", "add", "set"}:
            assert Change.model_validate({action: "stop"}).action == action


def test_actions_are_the_fields_of_a_change() -> None:
    assert tuple(Change.model_fields) == Change.actions


def test_insert_keeps_the_fields_of_the_part_as_written() -> None:
    change = Change.model_validate(
        {"insert": {"part": "prv", "kind": "pressure_reducer", "set": "50 psi", "between": ["stop", "split"]}}
    )
    assert isinstance(change.insert, Insert)
    assert (change.insert.part, change.insert.kind, change.insert.between) == (
        "prv",
        "pressure_reducer",
        ("stop", "split"),
    )
    assert change.insert.values == {"set": "50 psi"}


def test_add_keeps_the_run_apart_from_the_fields() -> None:
    change = Change.model_validate({"add": {"part": "t", "kind": "tee", "elevation": 3, "run": "split -> t"}})
    assert isinstance(change.add, Add)
    assert change.add.run == "split -> t"
    assert change.add.values == {"elevation": 3}


def test_set_keeps_everything_but_the_name_as_values() -> None:
    change = Change.model_validate({"set": {"part": "heater", "volume": "80 gal", "kind": "boiler"}})
    assert isinstance(change.set, SetValues)
    assert change.set.values == {"volume": "80 gal", "kind": "boiler"}


def test_failure_may_be_written_as_a_bare_name() -> None:
    assert Change.model_validate({"fail": "tank"}).fail == Fail(part="tank")
    written = {"fail": {"part": "tank", "how": "waterlogged"}}
    assert Change.model_validate(written).fail == Fail(part="tank", how="waterlogged")


@pytest.mark.parametrize("written", [{}, {"close": "a", "open": "b"}, {"close": None}, {"fail": None}])
def test_change_is_exactly_one_action(written: dict[str, object]) -> None:
    with pytest.raises(ValidationError, match="exactly one of close, open, remove, insert, add, set, fail, draw"):
        Change.model_validate(written)


def test_scenario_makes_at_least_one_change_in_order() -> None:
    scenario = Scenario.model_validate({"change": [{"close": "b"}, {"open": "a"}]})
    assert [change.action for change in scenario.change] == ["close", "open"]
    assert scenario.note == ""
    with pytest.raises(ValidationError):
        Scenario.model_validate({"note": "nothing", "change": []})
