"""The picture for a screen."""

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

import pytest
from drawing_board import sketch

from plumbnet.drawing.ink.areas import is_inside, zone_boxes
from plumbnet.drawing.routing.arrangement import arrangement_of
from plumbnet.drawing.routing.placement import Box
from plumbnet.drawing.screen.reservation import Reservation, reserved
from plumbnet.drawing.screen.screen_painter import ScreenPicture, screen_picture
from plumbnet.drawing.screen.svg_strokes import path_data
from plumbnet.drawing.symbols.symbol import symbol_named

HOUSE = "street -> meter -> cv -> tee -> heater -> tee2 -> tap.hot\ntee -> tap.cold\ntee2 -> pump -> heater.return"
KEEP = Reservation(
    {"meter": (symbol_named("checked_meter"),)},
    ringed={"meter", "cv"},
    named={"meter", "cv", "heater"},
    last_word="CONTROLLED",
)


@pytest.fixture(scope="module")
def picture() -> ScreenPicture:
    diagram = sketch(HOUSE).diagram
    return screen_picture(diagram, KEEP, tuple(diagram.items))


def of_class(picture: ScreenPicture, name: str) -> Iterator[ET.Element]:
    for element in ET.fromstring(picture.svg).iter():  # noqa: S314  our own
        if name in element.get("class", "").split():
            yield element


def test_every_part_that_is_no_joint_is_a_group_in_the_order_given(picture: ScreenPicture) -> None:
    names = [picture.order[int(part.get("data-part", ""))] for part in of_class(picture, "part")]
    assert names == [name for name in picture.order if not name.startswith("tee")]


def test_no_colour_is_baked_in(picture: ScreenPicture) -> None:
    assert "#" not in picture.svg
    assert "style=" not in picture.svg
    assert "fill=" not in picture.svg


def test_symbols_of_other_states_are_there_and_hidden(picture: ScreenPicture) -> None:
    shown = {(one.get("data-symbol"), "hidden" in one.get("class", "")) for one in of_class(picture, "variant")}
    assert {("meter", False), ("checked_meter", True)} <= shown


def test_smaller_symbol_is_joined_to_where_the_larger_one_would_be(picture: ScreenPicture) -> None:
    variants = {one.get("data-symbol"): list(one) for one in of_class(picture, "variant")}
    stubs = {name: [each for each in drawn if "pipe" in each.get("class", "")] for name, drawn in variants.items()}
    assert (len(stubs["meter"]), len(stubs["checked_meter"]), len(stubs["check_valve"])) == (2, 0, 0)


def test_what_stands_on_the_crown_of_a_taller_symbol_is_joined_to_a_lower_one() -> None:
    house = sketch("street -> heater -> tap.hot", heater="relief: 150 psi")
    keep = Reservation({"heater": (symbol_named("tankless_heater"),)}, last_word="X")
    drawn = screen_picture(house.diagram, keep, tuple(house.diagram.items))
    variants = {one.get("data-symbol"): list(one) for one in of_class(drawn, "variant")}
    crowns = [one.get("d", "") for one in variants["tankless_heater"] if "pipe" in one.get("class", "")]
    heater = next(one for one in of_class(drawn, "part") if drawn.order[int(one.get("data-part", ""))] == "heater")
    x, y = float(heater.get("data-x", "")), float(heater.get("data-y", ""))
    assert path_data([(x, y - 32.0), (x, y - 23.0)]) in crowns


def test_every_pipe_has_a_line_and_can_be_touched(picture: ScreenPicture) -> None:
    count = len(sketch(HOUSE).diagram.links)
    assert sorted(picture.lines) == list(range(count))
    assert sorted(int(one.get("data-pipe", "")) for one in of_class(picture, "pipe-hit")) == list(range(count))


def test_word_of_the_verdict_is_left_to_the_page(picture: ScreenPicture) -> None:
    (word,) = of_class(picture, "verdict")
    assert not word.text


def test_names_are_text_and_never_markup() -> None:
    diagram = sketch(HOUSE).diagram
    hostile = replace(symbol_named("valve"), name='"><b>&')
    keep = replace(KEEP, symbols={"cv": (hostile,)}, last_word="<i>")
    drawn = screen_picture(diagram, keep, tuple(diagram.items))
    assert 'data-symbol="&quot;&gt;&lt;b&gt;&amp;"' in drawn.svg
    assert not {"<b>", "<i>"} & set(re.findall(r"<[a-z]+>", drawn.svg))


def test_pieces_make_up_the_zone_that_the_drawing_shades() -> None:
    house = sketch(HOUSE)
    names = tuple(house.diagram.items)
    picture = screen_picture(house.diagram, Reservation(), names)
    kept = reserved(house.diagram, Reservation())
    (shading,) = house.schematic.shadings
    shaded = {name for name in names if is_inside(kept, name, shading.ports)}
    piped = [link.number for link in kept.links if link.start in shading.ports]
    pieces = picture.pieces
    made = {box for number in piped for box in pieces.pipes[number]} | {
        pieces.parts[name] for name in shaded & pieces.parts.keys()
    }
    made |= {box for number, name, box in pieces.tips if number in piped and name in shaded}
    made |= {box for name, boxes in pieces.runs.items() if name in {end.part for end in shading.ports} for box in boxes}
    arrangement = arrangement_of(kept)
    words = {
        tuple(edge + by for edge, by in zip(each.words_box, (-2, -2, 2, 2), strict=True))
        for each in arrangement.placements
    }
    wanted = [box for box in zone_boxes(kept, arrangement, shading.ports, {}) if box not in words]
    assert round(unary_area(made)) == round(unary_area(wanted))


def unary_area(boxes: Iterable[Box]) -> float:
    """The area that boxes cover together, on a grid of their edges."""
    found = list(boxes)
    xs, ys = (sorted({edge for box in found for edge in (box[at], box[at + 2])}) for at in (0, 1))
    return sum(
        (right - left) * (foot - top)
        for left, right in pairwise(xs)
        for top, foot in pairwise(ys)
        if any(box[0] <= left and right <= box[2] and box[1] <= top and foot <= box[3] for box in found)
    )


def test_picture_is_the_same_each_time(picture: ScreenPicture) -> None:
    diagram = sketch(HOUSE).diagram
    assert screen_picture(diagram, KEEP, tuple(diagram.items)) == picture
