"""Names that select many, in changes. What is wrong with them stands in tests/faults."""

import pytest

from plumbnet.layout.assemblies.wrong import Wrong
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.edits.selection import is_selecting, selected_parts, single_changes
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System

TEXT = """
plumbnet: 1
assemblies:
  room:
    ports: [cold]
    parts: {cold: tee, stops: {kind: valve, times: [a, b]}, taps: {kind: fixture, times: [a, b], elevation: 3 ft}}
    runs: [cold -> stops/each -> taps/each.cold]
parts:
  street: {kind: main, pressure: 60 psi}
  stop: valve
  cold: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 120 degF, relief: {pressure: 150 psi}}
  rooms: {use: room, times: 4, elevation: {first: 10 ft, step: 10 ft}}
runs: [street -> stop -> cold -> heater, cold -> rooms/each.cold]
"""


@pytest.fixture
def system() -> System:
    return read_system(TEXT.encode(), file="f.yaml")


def change(action: str, value: object) -> Change:
    return Change.model_validate({action: value})


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        ("stop", "stop"),
        ("rooms/2/stops/a", "rooms/2/stops/a"),
        ("rooms/2-3/stops/last", "rooms/2/stops/b rooms/3/stops/b"),
        ("rooms/first/taps/each", "rooms/1/taps/a rooms/1/taps/b"),
        ("heater/relief", "heater/relief"),
    ],
)
def test_a_name_selects_parts_in_the_order_of_the_file(system: System, name: str, parts: str) -> None:
    assert selected_parts(system, name) == tuple(parts.split())
    assert is_selecting(system, name) is (parts != name)


def test_one_that_was_taken_out_is_no_longer_among_each(system: System) -> None:
    after = with_changes(system, [change("remove", "rooms/2/taps/a"), change("remove", "rooms/2/stops/a")])
    assert selected_parts(after, "rooms/2/stops/each") == ("rooms/2/stops/b",)
    with pytest.raises(Wrong, match="no part is named rooms/2/stops/a"):
        selected_parts(after, "rooms/2/stops/a")


def test_a_change_of_many_gives_one_to_each(system: System) -> None:
    after = with_changes(system, [change("set", {"part": "rooms/2-4/stops/a", "state": ["shut", "open", "shut"]})])
    shut = [name for name, part in after.parts.items() if part.can_be_shut() and not part.is_valve()]
    assert shut == ["rooms/2/stops/a", "rooms/4/stops/a"]


def test_heights_in_a_change_count_from_the_instance(system: System) -> None:
    after = with_changes(system, [change("set", {"part": "rooms/each/taps/a", "elevation": "7 ft"})])
    assert [after.written[f"rooms/{k}/taps/a"]["elevation"] for k in (1, 4)] == ["17 ft", "47 ft"]


def test_a_new_part_stands_in_every_instance_among_the_parts_there(system: System) -> None:
    insert = {"part": "rooms/each/filter", "kind": "filter", "between": ["cold", "stops/a"]}
    after = with_changes(system, [change("insert", insert)])
    pipes = [pipe.name for pipe in after.pipes]
    assert [name for name in after.parts if name.endswith("/filter")] == [f"rooms/{k}/filter" for k in range(1, 5)]
    assert pipes.count("rooms/3/filter -> rooms/3/stops/a") == 1
    assert "rooms/3/cold -> rooms/3/stops/a" not in pipes
    assert after.written["rooms/3/filter"]["elevation"] == "30 ft"


def test_a_run_of_an_added_part_takes_names_from_around_the_instance_where_it_has_none(system: System) -> None:
    added = change(
        "add",
        {
            "part": "rooms/2/tank",
            "kind": "expansion_tank",
            "volume": "2 gal",
            "precharge": "60 psi",
            "run": "cold -> tank",
        },
    )
    assert single_changes(system, added)[0].add.run == "rooms/2/cold -> rooms/2/tank"  # type: ignore[union-attr]  # it adds
    outside = change("add", {"part": "rooms/2/drain", "kind": "fixture", "run": "stop.out -> drain.cold"})
    assert single_changes(system, outside)[0].add.run == "stop.out -> rooms/2/drain.cold"  # type: ignore[union-attr]  # it adds


def test_a_change_says_which_of_its_names_is_wrong(system: System) -> None:
    with pytest.raises(ChangeError) as caught:
        with_changes(system, [change("open", "stop"), change("set", {"part": "rooms/7/stops/a", "state": "shut"})])
    assert caught.value.mistakes[0].path == (1, "set", "part")
    assert str(caught.value) == "rooms has no 7; it has 1 to 4"


def test_a_layout_without_assemblies_is_left_alone() -> None:
    plain = read_system(b"plumbnet: 1\nparts: {a: tee, b: tee}\nruns: [a -> b]", file="f")
    close = change("close", "a/each")
    assert single_changes(plain, close) == (close,)
