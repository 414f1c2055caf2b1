from plumbnet.drawing.items.item import Diagram, Item, Link
from plumbnet.drawing.palette import Service
from plumbnet.drawing.symbols.symbol import SYMBOLS
from plumbnet.layout.model.system import End

METER = Item("meter", SYMBOLS["meter"], ("in", "out"))
AHEAD = Link(0, End("meter", "out"), End("tap", "cold"), Service.COLD)
ROUND = Link(1, End("meter", "out"), End("meter", "in"), Service.COLD)


def test_ends_of_a_link_are_told_apart_by_the_item_at_hand() -> None:
    assert (AHEAD.near("tap"), AHEAD.far("tap")) == (End("tap", "cold"), End("meter", "out"))
    assert (AHEAD.near("meter"), AHEAD.far("meter")) == (End("meter", "out"), End("tap", "cold"))


def test_link_from_an_item_to_itself_is_listed_there_once() -> None:
    diagram = Diagram({"meter": METER}, (AHEAD, ROUND))
    assert (AHEAD.is_round, ROUND.is_round) == (False, True)
    assert diagram.links_at["meter"] == [AHEAD, ROUND]


def test_end_stands_for_itself_where_nothing_stands_behind_it() -> None:
    diagram = Diagram({}, (), {End("a+1", "branch 1"): End("a", "in")})
    assert diagram.origin(End("a+1", "branch 1")) == End("a", "in")
    assert diagram.origin(End("b", "in")) == End("b", "in")
