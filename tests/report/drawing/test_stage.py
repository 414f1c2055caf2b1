from itertools import pairwise

import pytest
from drawing_board import Sketch, sketch

from plumbnet.report.drawing.channels import channels
from plumbnet.report.drawing.heights import heights, ranks
from plumbnet.report.drawing.stage import TRACK, Stage
from plumbnet.report.drawing.stance import Tip


def stage_of(house: Sketch) -> Stage:
    ranked = ranks(house.grid, house.columns, house.stances)
    height = heights(house.grid, ranked, house.stances)
    return Stage(house.grid, ranked, house.stances, height, channels(house.grid, ranked, house.stances, height))


HOUSE = "street -> tee1 -> heater -> tee2 -> tap1.hot\ntee2 -> tap2.hot\ntee1 -> tap1.cold\ntee1 -> tank"


def test_columns_stand_apart_by_their_rooms() -> None:
    stage = stage_of(sketch(HOUSE))
    for number, (left, right) in enumerate(pairwise(stage.middles)):
        cells = len(stage.grid.plan.cells)
        rooms = [
            [stage.stances[node].room for node in stage.ranked.columns[n] if node < cells] for n in (number, number + 1)
        ]
        needed = max((room.right for room in rooms[0]), default=0.0) + max(
            (room.left for room in rooms[1]), default=0.0
        )
        assert right - left > needed


def test_tracks_of_a_channel_stand_apart() -> None:
    stage = stage_of(sketch(HOUSE))
    for number, channel in enumerate(stage.between):
        for net, track in channel.tracks.items():
            assert stage.track_x(number, net) == pytest.approx(stage.track_x(number, -1) + TRACK * track)


def test_run_of_a_tee_spans_its_tank_and_its_branches() -> None:
    house = sketch(HOUSE)
    stage = stage_of(house)
    cell = house.plan.pieces["tee1"][0]
    left, right = stage.run(cell)
    assert left == stage.x(cell)
    assert right in stage.spots[cell]
    assert right > left


def test_pipe_joins_a_device_at_its_socket() -> None:
    house = sketch("street -> meter -> tap.cold")
    stage = stage_of(house)
    cell = house.plan.pieces["meter"][0]
    x, y = stage.tip(cell, Tip(0, is_head=True), 0.0)
    assert (x, y) == (stage.x(cell) - house.model.items["meter"].symbol.width / 2, stage.height[cell])
