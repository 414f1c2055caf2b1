from itertools import pairwise

import pytest
from drawing_board import Sketch, sketch

from plumbnet.drawing.columns.footprints import Tip
from plumbnet.drawing.columns.heights import node_heights
from plumbnet.drawing.routing.channels import channels
from plumbnet.drawing.routing.coordinates import TRACK, Coordinates


def coordinates_of(house: Sketch) -> Coordinates:
    height = node_heights(house.layers)
    return Coordinates(house.layers, height, channels(house.layers, height))


HOUSE = "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee2 -> tap2.hot\ntee1 -> tap1.cold\ntee1 -> tank"


def test_columns_stand_apart_by_their_rooms() -> None:
    coordinates = coordinates_of(sketch(HOUSE))
    for number, (left, right) in enumerate(pairwise(coordinates.middles)):
        stations = len(coordinates.graph.stations)
        rooms = [
            [coordinates.layers.footprints[node].room for node in coordinates.layers.columns[n] if node < stations]
            for n in (number, number + 1)
        ]
        needed = max((room.right for room in rooms[0]), default=0.0) + max(
            (room.left for room in rooms[1]), default=0.0
        )
        assert right - left > needed


def test_tracks_of_a_channel_stand_apart() -> None:
    coordinates = coordinates_of(sketch(HOUSE))
    for number, channel in enumerate(coordinates.between):
        for net, track in channel.tracks.items():
            assert coordinates.track_x(number, net) == pytest.approx(coordinates.track_x(number, -1) + TRACK * track)


def test_run_of_a_tee_spans_its_tank_and_its_branches() -> None:
    house = sketch(HOUSE)
    coordinates = coordinates_of(house)
    station = house.graph.pieces["tee1"][0]
    left, right = coordinates.run(station)
    assert left == coordinates.x(station)
    assert right in coordinates.spots[station]
    assert right > left


def test_pipe_joins_a_device_at_its_socket() -> None:
    house = sketch("street -> meter -> tap.cold")
    coordinates = coordinates_of(house)
    station = house.graph.pieces["meter"][0]
    x, y = coordinates.tip(station, Tip(0, is_head=True), 0.0)
    assert (x, y) == (
        coordinates.x(station) - house.diagram.items["meter"].symbol.width / 2,
        coordinates.height[station],
    )
