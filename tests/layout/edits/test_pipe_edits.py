"""Changes to the pipes: parts removed, inserted, added with a run."""

from collections.abc import Mapping

import pytest
from conftest import Drawn, system

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System

LITRE = 0.001
TANK = {"part": "tank", "kind": "expansion_tank", "volume": "4.5 gal", "precharge": "60 psi"}


def changed(before: System, *changes: Mapping[str, object]) -> System:
    return with_changes(before, [Change.model_validate(change) for change in changes])


def refusal(before: System, *changes: Mapping[str, object]) -> str:
    with pytest.raises(ChangeError) as caught:
        changed(before, *changes)
    return str(caught.value)


def joined(of: System) -> list[str]:
    """Every pipe with its ports, in the order of the system."""
    return [f"{a.part}.{a.port} -> {b.part}.{b.port}" for pipe in of.pipes for a, b in [pipe.ends]]


def with_pipes(*runs: str) -> System:
    parts = "{street: {kind: main, pressure: 60 psi}, stop: valve, cv: check_valve, tap: fixture}"
    rows = "".join(f"  - {run}\n" for run in runs)
    return read_system(f"plumbnet: 1\nunits: metric\nparts: {parts}\nruns:\n{rows}".encode(), file="f")


#   street --- stop --- cv --- tap         street ----------- cv --- tap
def test_removed_part_leaves_a_pipe_in_its_direction_with_all_the_water() -> None:
    before = with_pipes("{path: street -> stop, volume: 2}", "{path: stop -> cv, volume: 3}", "cv -> tap.hot")
    after = changed(before, {"remove": "stop"})
    assert joined(after) == ["street.out -> cv.in", "cv.out -> tap.hot"]
    assert after.pipes[0].volume_m3 == pytest.approx(5 * LITRE)
    assert set(after.parts) == {"street", "cv", "tap"}
    assert "stop" not in after.written


def test_removed_part_leaves_the_length_and_the_tube_of_its_pipes() -> None:
    pipe = "pipe: copper-L 3/4 in, length"
    before = with_pipes(f"{{path: street -> stop, {pipe}: 2}}", f"{{path: stop -> cv, {pipe}: 3}}", "cv -> tap.hot")
    good = changed(before, {"remove": "stop"}).pipes[0]
    assert (good.length_m, good.tube) == (5.0, "copper-L 3/4 in")


def test_removed_part_between_unlike_tubes_leaves_the_tube_open() -> None:
    one, other = "pipe: copper-L 3/4 in, length: 2", "pipe: copper-L 1/2 in, length: 2"
    before = with_pipes(f"{{path: street -> stop, {one}}}", f"{{path: stop -> cv, {other}}}", "cv -> tap.hot")
    assert changed(before, {"remove": "stop"}).pipes[0].tube is None
    before = with_pipes(f"{{path: street -> stop, {one}}}", "stop -> cv", "cv -> tap.hot")
    assert changed(before, {"remove": "stop"}).pipes[0].length_m is None


@pytest.mark.parametrize(
    ("runs", "good"),
    [
        (["street -> stop", "cv -> stop.out"], "street.out -> cv.out"),
        (["stop -> street", "stop.in -> cv"], "cv.in -> street.out"),
        (["stop -> cv", "street -> stop"], "street.out -> cv.in"),
    ],
)
def test_pipe_is_made_good_however_its_runs_were_drawn(runs: list[str], good: str) -> None:
    after = changed(
        with_pipes(*runs, "cv.out -> tap.hot" if "cv.out" not in good else "cv.in -> tap.hot"), {"remove": "stop"}
    )
    assert joined(after)[0] == good


def test_water_passes_where_a_check_valve_was_removed() -> None:
    before = system("street -> cv -> tap.hot")
    after = changed(before, {"remove": "cv"})
    assert Drawn(before).zone("street") != Drawn(before).zone("tap.hot")
    assert Drawn(after).zone("street") == Drawn(after).zone("tap.hot")


#   hot  ---.                                hot  ---|
#           sink        is capped, not
#   cold ---'                                cold ---|
def test_removed_fixture_does_not_join_hot_and_cold() -> None:
    after = changed(system("street -> tee -> tap.cold\ntee -> heater -> tap.hot"), {"remove": "tap"})
    assert joined(after) == ["street.out -> tee.joint", "tee.joint -> heater.cold"]


def test_removed_end_takes_its_pipe_along() -> None:
    after = changed(system("street -> tee -> tap.cold\ntee -> tank"), {"remove": "tank"})
    assert joined(after) == ["street.out -> tee.joint", "tee.joint -> tap.cold"]


def test_removed_tee_of_two_pipes_joins_them() -> None:
    assert joined(changed(system("street -> tee -> tap.cold"), {"remove": "tee"})) == ["street.out -> tap.cold"]


def test_removed_supply_joins_nothing() -> None:
    after = changed(system("street -> tap.cold\nstreet -> tap.hot"), {"remove": "street"})
    assert joined(after) == []


def test_removed_heater_takes_its_relief_along() -> None:
    relief = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}"
    after = changed(system("street -> heater -> tap.hot", heater=relief), {"remove": "heater"})
    assert set(after.parts) == {"street", "tap"}
    assert joined(after) == ["street.out -> tap.hot"]


def test_part_with_three_pipes_stays() -> None:
    said = refusal(system("street -> tee -> tap.cold\ntee -> tank"), {"remove": "tee"})
    assert said.startswith("tee joins 3 pipes; ")


#   street -------- stop        street --- cv2 --- stop
def test_inserted_part_has_half_of_the_pipe_on_each_side() -> None:
    before = with_pipes("{path: street -> stop, pipe: copper-L 3/4 in, length: 3, volume: 2}", "stop -> cv -> tap.hot")
    after = changed(before, {"insert": {"part": "cv2", "kind": "check_valve", "between": ["street", "stop"]}})
    assert joined(after)[:2] == ["street.out -> cv2.in", "cv2.out -> stop.in"]
    for pipe in after.pipes[:2]:
        assert pipe.volume_m3 == pytest.approx(1 * LITRE)
        assert (pipe.length_m, pipe.tube, pipe.line) == (1.5, "copper-L 3/4 in", before.pipes[0].line)
    assert after.written["cv2"] == {"kind": "check_valve"}


def test_first_neighbour_is_at_the_inlet_whatever_way_the_pipe_was_drawn() -> None:
    insert = {"part": "cv2", "kind": "check_valve", "between": ["stop", "street"]}
    after = changed(with_pipes("street -> stop -> cv -> tap.hot"), {"insert": insert})
    assert joined(after)[:2] == ["stop.in -> cv2.in", "cv2.out -> street.out"]


def test_inserted_heater_brings_its_relief() -> None:
    heater = {"kind": "boiler", "volume": "5 gal", "setpoint": "180 degF", "relief": {"pressure": "30 psi"}}
    after = changed(system("street -> tap.hot"), {"insert": {"part": "b", **heater, "between": ["street", "tap"]}})
    assert joined(after) == ["street.out -> b.return", "b.supply -> tap.hot", "b.relief -> b/relief.in"]


def test_port_tells_which_of_two_pipes_is_meant() -> None:
    before = system("street -> tee -> heater.cold\nheater.hot -> tee")
    insert = {"part": "cv", "kind": "check_valve", "between": ["heater.hot", "tee"]}
    assert joined(changed(before, {"insert": insert}))[2:] == ["heater.hot -> cv.in", "cv.out -> tee.joint"]
    said = refusal(before, {"insert": {**insert, "between": ["heater", "tee"]}})
    assert said.startswith("2 pipes join heater and tee; ")


@pytest.mark.parametrize(
    ("insert", "said"),
    [
        (
            {"part": "cv", "kind": "check_valve", "between": ["street", "heater"]},
            "no pipe joins street and heater; name two parts that a pipe joins",
        ),
        (
            {"part": "tap2", "kind": "fixture", "between": ["street", "tee"]},
            "a fixture cannot stand in a pipe, for it has no inlet and outlet of its own; add it with a run",
        ),
        (
            {"part": "tee", "kind": "valve", "between": ["street", "tee"]},
            "tee is there already; give the new part a name of its own",
        ),
        (
            {"part": "prv", "kind": "pressure_reducer", "between": ["street", "tee"]},
            'prv, a pressure_reducer, needs "set"; for example set: 62 psi or 430 kPa',
        ),
        (
            {"part": "cv", "kind": "check_valve", "between": ["street", "tea"]},
            'no part is called "tea": did you mean "tee"?',
        ),
        (
            {"part": "cv", "kind": "check_valve", "between": ["street.in", "tee"]},
            'street, a main, has no port "in"; it has out',
        ),
    ],
)
def test_insert_that_cannot_be_made_is_refused(insert: dict[str, object], said: str) -> None:
    assert refusal(system("street -> tee -> heater -> tap.hot"), {"insert": insert}) == said


def test_added_part_is_joined_by_its_run() -> None:
    after = changed(system("street -> tee -> tap.hot"), {"add": {**TANK, "run": "tee -> tank"}})
    assert joined(after) == ["street.out -> tee.joint", "tee.joint -> tap.hot", "tee.joint -> tank.in"]
    assert after.pipes[-1].volume_m3 == 0.0
    assert after.written["tank"] == {"kind": "expansion_tank", "volume": "4.5 gal", "precharge": "60 psi"}


def test_added_part_may_stand_inside_its_run() -> None:
    pump = {"part": "pump", "kind": "circulator", "run": "tap.cold -> pump -> tee"}
    after = changed(system("street -> tee -> tap.hot"), {"add": pump})
    assert joined(after)[2:] == ["tap.cold -> pump.in", "pump.out -> tee.joint"]


def test_inserted_tee_takes_the_tank_that_is_added_next() -> None:
    tee = {"part": "t", "kind": "tee", "between": ["street", "tap"]}
    after = changed(system("street -> tap.hot"), {"insert": tee}, {"add": {**TANK, "run": "t -> tank"}})
    assert joined(after) == ["street.out -> t.joint", "t.joint -> tap.hot", "t.joint -> tank.in"]


@pytest.mark.parametrize(
    ("run", "said"),
    [
        ("valve -> tank", "valve.out already has its pipe; insert a tee first and join there"),
        ("tank -> tee -> tank", "tank.in already has its pipe; insert a tee first and join there"),
        ("street -> tee", "this run does not mention tank; join the new part to one that is there"),
        ("tank", 'a run joins at least two parts; write it as "first -> second"'),
        ("tank -> te", 'no part is called "te": did you mean "tee"?'),
        ("tank -> tap", "tap, a fixture, has the ports hot and cold; name one, for example tap.hot"),
        ("tee -> tank -> street", "a run cannot pass through tank, an expansion_tank; end the run there"),
    ],
)
def test_add_that_cannot_be_made_is_refused(run: str, said: str) -> None:
    assert refusal(system("street -> valve -> tee -> tap.hot"), {"add": {**TANK, "run": run}}) == said
