"""Ports through as many assemblies as it takes."""

from assembling import chains

from plumbnet.layout.assemblies.port_places import split_target

NESTED = """
assemblies:
  room: {ports: {cold: stop.in}, parts: {stop: valve, tap: fixture}, runs: [stop -> tap.cold]}
  floor: {ports: {riser: rooms/first.cold}, parts: {rooms: {use: room, times: 2}, t: tee},
          runs: [t -> rooms/last.cold]}
  wing: {ports: {riser: floors/2.riser}, parts: {floors: {use: floor, times: 2}, t: tee}, runs: [t -> floors/1.riser]}
parts: {a: tee, wings: {use: wing, times: [north, south]}}
runs: [a -> wings/each.riser]
"""


def test_a_run_ends_at_the_part_that_is_really_there() -> None:
    assert chains(NESTED)[-2:] == [
        "a -> wings/north/floors/2/rooms/1/stop.in",
        "a -> wings/south/floors/2/rooms/1/stop.in",
    ]


def test_a_target_is_a_name_a_word_and_a_port() -> None:
    assert split_target("rooms/first.hot") == ("rooms", "first", "hot")
    assert split_target("hot") == ("hot", None, None)
