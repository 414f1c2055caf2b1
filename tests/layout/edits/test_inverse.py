"""Changes taken back: the report is the same again byte for byte, or the reason says what would be lost."""

from collections.abc import Mapping
from dataclasses import fields, replace
from functools import cache
from pathlib import Path

import pytest
from changing import change, every_change
from conftest import system
from forms import as_json
from hypothesis import given, settings
from hypothesis import strategies as st
from oracles.random_layouts import Layout, layouts

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.edits.inverse import inverse, undo
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
HOUSE = """street -> meter -> valve -> tee -> heater -> tap.hot
           tee -> tank
           tee -> tap.cold"""
RELIEF = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}"


def house(**parts: str) -> System:
    return system(HOUSE, **{"heater": RELIEF, **parts})


def answer(of: System) -> str:
    """The whole report, or what stands in its way."""
    try:
        return as_json(plumbnet.check(of))
    except LayoutError as error:
        return str(error)


def taken_back(before: System, made: Change, told: str | None = None) -> bool:
    """Whether the change has an inverse; that one is tried, and what was told is told again."""
    found = inverse(before, made)
    if found.changes is None:
        assert found.reason
        return False
    after = with_changes(before, [made, *found.changes])
    assert is_same(after, before) or answer(after) == (told or answer(before))
    return True


def is_same(one: System, other: System) -> bool:
    """Whether all that is known of two layouts is alike, but for what the next test shows to change no answer.

    That the same has the same answer, others test.
    """
    return all(known(one, each.name) == known(other, each.name) for each in fields(one))


def known(of: System, name: str) -> str:
    """What is known under one name: pipes without water, and fields as written, in an order of their own."""
    if name == "written":
        return repr(sorted((part, sorted(given.items())) for part, given in of.written.items()))
    if name == "pipes":
        wet, dry = (
            [replace(pipe, line=0) for pipe in of.pipes if bool(pipe.volume_m3) is wet] for wet in (True, False)
        )
        return repr((wet, sorted(map(repr, dry))))
    return repr(getattr(of, name))


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_order_of_pipes_without_water_and_of_written_fields_changes_no_answer(path: Path) -> None:
    before = plumbnet.read(path)
    written = {part: dict([*given.items()][::-1]) for part, given in [*before.written.items()][::-1]}
    dry = [replace(pipe, line=0) for pipe in before.pipes if not pipe.volume_m3]
    turned = replace(before, written=written, pipes=(*dry[::-1], *(pipe for pipe in before.pipes if pipe.volume_m3)))
    assert dry
    assert is_same(turned, before)
    assert answer(turned) == shown(path)


@cache
def shown(path: Path) -> str:
    return answer(plumbnet.read(path))


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_change_to_a_showcase_layout_is_taken_back_or_says_why_not(path: Path) -> None:
    before, told = plumbnet.read(path), shown(path)
    back = [taken_back(before, one, told) for one in every_change(before)]
    assert sum(back) > len(back) / 2


@settings(max_examples=30, deadline=None)
@given(layouts(), st.data())
def test_changes_to_random_layouts_are_taken_back_or_say_why_not(layout: Layout, data: st.DataObject) -> None:
    made, told = every_change(layout.system), answer(layout.system)
    for one in data.draw(st.lists(st.sampled_from(made), max_size=8)):
        taken_back(layout.system, one, told)


@pytest.mark.parametrize(
    ("made", "back"),
    [
        ({"close": "valve"}, [{"set": {"part": "valve", "state": None}}]),
        ({"open": "valve"}, [{"set": {"part": "valve", "state": None}}]),
        ({"draw": "tap"}, [{"set": {"part": "tap", "drawing": None}}]),
        ({"fail": "tank"}, [{"set": {"part": "tank", "state": None}}]),
        ({"set": {"part": "tank", "volume": "8 gal"}}, [{"set": {"part": "tank", "volume": "4.5 gal"}}]),
        ({"insert": {"part": "cv", "kind": "check_valve", "between": ["tee", "heater"]}}, [{"remove": "cv"}]),
        ({"add": {"part": "v", "kind": "vent", "run": "tee -> v"}}, [{"remove": "v"}]),
        ({"remove": "valve"}, [{"insert": {"part": "valve", "kind": "valve", "between": ["meter.out", "tee.joint"]}}]),
    ],
)
def test_inverse_is_what_a_person_would_do(made: Mapping[str, object], back: list[Mapping[str, object]]) -> None:
    assert undo(house(), change(made)) == tuple(change(fields) for fields in back)


def test_valve_that_is_written_as_open_is_opened_again() -> None:
    written = house(valve="state: open")
    assert undo(written, change({"close": "valve"})) == (change({"open": "valve"}),)
    assert undo(written, change({"open": "valve"})) == ()
    assert undo(house(valve="state: shut"), change({"open": "valve"})) == (change({"close": "valve"}),)


def test_tank_taken_off_is_hung_where_it_was() -> None:
    (back,) = undo(house(), change({"remove": "tank"})) or ()
    assert back.add is not None
    assert back.add.run == "tee.joint -> tank.in"


def test_heater_exchanged_for_another_kind_comes_back_with_all_its_fields() -> None:
    made = change({"set": {"part": "heater", "kind": "tankless_heater", "volume": None}})
    assert taken_back(house(), made)


def test_plugged_relief_written_inside_a_heater_is_exchanged_for_a_sound_one() -> None:
    before = house()
    made = change({"fail": "heater/relief"})
    assert answer(with_changes(before, [made])) != answer(before)
    assert taken_back(before, made)


def test_relief_valve_taken_off_a_heater_comes_back() -> None:
    assert taken_back(house(), change({"remove": "heater/relief"}))


def test_what_the_report_assumes_is_assumed_again() -> None:
    before = house()
    made = change({"fail": "tap"})
    assert "a fixture does not join hot and cold" in answer(before)
    assert "a fixture does not join hot and cold" not in answer(with_changes(before, [made]))
    assert taken_back(before, made)


@pytest.mark.parametrize(
    "values", [{"highest": "75 psi"}, {"lowest": "40 psi"}, {"highest": "75 psi", "lowest": "40 psi"}]
)
def test_street_that_was_given_its_extremes_is_steady_again(values: dict[str, str]) -> None:
    before = house()
    made = change({"set": {"part": "street", **values}})
    assert answer(with_changes(before, [made])) != answer(before)
    assert taken_back(before, made)


def test_fixture_with_two_connections_cannot_be_added_again() -> None:
    found = inverse(house(), change({"remove": "tap"}))
    assert found.changes is None
    assert found.reason == ("tap joins two pipes and is no way through; a run would join it to one of them only")


def test_pipe_that_lies_beside_another_hides_where_a_part_was() -> None:
    before = system("street -> tee -> valve -> tee2 -> tap.hot\n tee -> tee2")
    found = inverse(before, change({"remove": "valve"}))
    assert found.changes is None
    assert found.reason == (
        "what would take it back cannot be done: 2 pipes join tee.joint and tee2.joint; "
        "name a port with each, as heater.hot"
    )


def test_part_between_unlike_pipes_has_no_inverse() -> None:
    text = """
        plumbnet: 1
        parts: {street: {kind: main, pressure: 60 psi}, cv: check_valve, tap: fixture}
        runs: [{path: street -> cv, volume: 1 gal}, {path: cv -> tap.cold, volume: 2 gal}]
        """
    found = inverse(plumbnet.read_bytes(text.encode()), change({"remove": "cv"}))
    assert found.changes is None
    assert found.reason == (
        "the pipe street -> cv would not be as it was: its direction, its length or the water in it"
    )


def test_run_that_joined_two_parts_anew_leaves_a_pipe_behind() -> None:
    before = system("street -> tee -> tee2 -> tap.hot\n tee -> tap2.cold")
    made = change({"add": {"part": "cv", "kind": "check_valve", "run": "tee -> cv -> tee2"}})
    found = inverse(before, made)
    assert found.changes is None
    assert "the pipe tee -> tee2" in found.reason


def test_change_that_cannot_be_made_has_no_inverse_either() -> None:
    with pytest.raises(ChangeError, match='no part is called "stp"'):
        undo(house(), change({"close": "stp"}))
