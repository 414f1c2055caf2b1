"""Ports that nothing is joined to. Their sentences stand in tests/faults."""

from assembling import told_and_written

ROOM = "assemblies: {room: {ports: [hot, cold], parts: {hot: tee, cold: tee}, runs: [hot -> cold]}}\n"


def told(parts: str, runs: str, *, assemblies: str = ROOM) -> list[str]:
    return told_and_written(f"{assemblies}parts: {{a: tee, {parts}}}\nruns: [{runs}]")[0]


def test_every_port_of_every_instance_is_joined_or_capped() -> None:
    rooms = "rooms: {use: room, times: 4}"
    assert told(rooms, "a -> rooms/each.hot, a -> rooms/each.cold") == []
    assert told(rooms, "a -> rooms/each.hot, rooms/each.cold -> capped") == []
    assert told(rooms, "a -> rooms/each.hot, rooms/1-3.cold -> capped") == [
        "nothing is joined to cold of rooms/4; join it, or close it with a run: rooms/4.cold -> capped"
    ]


def test_a_port_that_is_handed_on_is_joined_further_out() -> None:
    wing = "wing: {ports: {x: r.hot}, parts: {r: {use: room}}, runs: [r.cold -> capped]}"
    handing = ROOM.replace("assemblies: {", f"assemblies: {{{wing}, ")
    assert told("w: {use: wing}", "a -> w.x", assemblies=handing) == []


def test_what_no_run_mentions_is_told_with_its_numbers() -> None:
    assert told("rooms: {use: room}, t: {kind: tee, times: 5}", "a -> rooms.hot, a -> rooms.cold, a -> t/2-4") == [
        "no run mentions 2 of t (1, 5); join them in a run, or take them out"
    ]


def test_a_port_at_the_first_of_an_instance_with_a_mistake_of_its_own_tells_that_mistake() -> None:
    wing = "wing: {ports: {x: r/first.hot}, parts: {r: {use: room, bogus: 1}}, runs: [r.cold -> capped]}"
    handing = ROOM.replace("assemblies: {", f"assemblies: {{{wing}, ")
    assert any("bogus" in text for text in told("w: {use: wing}", "a -> w.x", assemblies=handing))
