from itertools import combinations

from drawing_board import Sketch, sketch

from plumbnet.drawing.columns.heights import node_heights
from plumbnet.drawing.routing.channels import Channel, Pin, Strand, channel_of, channels, net_of

HOUSE = """
street -> tee1 -> heater1 -> tee2 -> tap1.hot
tee1 -> heater2 -> tee2
tee2 -> tap2.hot
tee1 -> tap1.cold
tee1 -> tap2.cold
"""


def channels_of(house: Sketch) -> list[Channel]:
    return channels(house.layers, node_heights(house.layers))


def test_there_is_a_channel_on_each_side_of_every_column() -> None:
    house = sketch(HOUSE)
    assert len(channels_of(house)) == house.grid.column_count + 1


def test_every_strand_of_every_arc_is_in_one_net() -> None:
    house = sketch(HOUSE)
    strands = [(s.arc, s.start, s.end) for c in channels_of(house) for net in c.nets for s in net.strands]
    assert len(strands) == len(set(strands)) == len(house.grid.hops)


def test_pipes_that_leave_one_tee_share_an_upright() -> None:
    house = sketch(HOUSE)
    station = house.graph.pieces["tee1"][0]
    homes = [net for channel in channels_of(house) for net in channel.nets if net.home and net.home.node == station]
    assert [len(net.strands) for net in homes] == [sum(arc.tail == station for arc in house.graph.arcs)]


def test_uprights_on_one_track_do_not_meet() -> None:
    for channel in channels_of(sketch(HOUSE)):
        for one, other in combinations(channel.tracks, 2):
            if channel.tracks[one] == channel.tracks[other]:
                nets = sorted((channel.nets[one], channel.nets[other]), key=lambda net: net.top)
                assert nets[0].foot < nets[1].top


def test_straight_pipes_need_no_track() -> None:
    house = sketch("street -> meter -> tap.cold")
    assert [channel.track_count for channel in channels_of(house)] == [0, 0, channels_of(house)[2].track_count, 0]
    assert not any(channel.clashes for channel in channels_of(house))


#   a ---+    +--- d       the pipe from a may not come down onto the height of b
#        |    |            on the left of the one that rises from there
#   b ---|----+
#        +-------- c
def test_pipes_are_not_laid_on_each_other() -> None:
    for sign in (1.0, -1.0):
        falls = net_of([Strand(0, Pin(1, 0.0, is_left=True), Pin(3, sign * 100.0, is_left=False))])
        begins = net_of([Strand(1, Pin(2, sign * 101.0, is_left=True), Pin(4, sign * 200.0, is_left=False))])
        for nets in ((falls, begins), (begins, falls)):
            channel = channel_of(nets)
            assert channel.tracks[nets.index(begins)] < channel.tracks[nets.index(falls)]
            assert channel.clashes == ()


def test_pipes_that_must_lie_on_each_other_are_told() -> None:
    one = net_of([Strand(0, Pin(1, 0.0, is_left=True), Pin(3, 100.0, is_left=False))])
    other = net_of([Strand(1, Pin(2, 100.0, is_left=True), Pin(4, 0.0, is_left=False))])
    assert len(channel_of((one, other)).clashes) == 1
