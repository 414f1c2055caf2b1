"""Pictures of the whole layout."""

from conftest import system
from tall_buildings import tall, tower

import plumbnet
from plumbnet.report.page.chapters.picture_chapters import (
    ACROSS,
    MOST_DRAWN,
    MOST_LADDERS,
    drawn,
    ladders,
    piping,
    shown_up,
)
from plumbnet.report.page.page_content import Entry, PagePicture
from plumbnet.report.prose.prose_blocks import Paragraph, Table
from plumbnet.study.dossier.report_dossier import Dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def test_piping_is_drawn_and_its_heaters_named_under_it() -> None:
    picture, entry = piping(Dossier(plumbnet.check(system(HOUSE)), None, {}, (), {}))
    assert isinstance(picture, PagePicture)
    assert picture.shows_parts
    assert picture.words == "Schematic of 5 parts; heater is sealed."
    assert picture.draw().axes
    assert entry == Entry("SEALED", "sealed", "heater", (), ("heater", "cv"))


def test_small_picture_lights_nothing_up() -> None:
    small = drawn(plumbnet.check(system(HOUSE)), "t", is_small=True)
    assert isinstance(small, PagePicture)
    assert (small.shows_parts, small.is_small) == (False, True)


def test_way_out_lights_up_where_nothing_stops_the_water() -> None:
    report = plumbnet.check(system("street -> tee -> heater -> tap.hot"))
    assert shown_up(report.heaters[0]) == ("heater", "tee", "street")


def test_ladders_stand_side_by_side_and_far_too_many_are_counted() -> None:
    count = MOST_LADDERS + 2
    runs = "\n".join(f"tee -> heater{number} -> tap{number}.hot" for number in range(1, count + 1))
    sizes = {f"heater{number}": f"volume: {20 + number} gal" for number in range(1, count + 1)}
    *pictures, left = ladders(Dossier(plumbnet.check(system(f"street -> tee\n{runs}", **sizes)), None, {}, (), {}))
    assert len(pictures) == MOST_LADDERS // ACROSS
    first = pictures[0]
    assert isinstance(first, PagePicture)
    assert first.title == "Ladder of heater1, heater2 and heater3"
    assert "heater1: street opens in turn" in first.words
    assert left == Paragraph("2 more heaters have no picture here.")


def test_piping_that_no_page_could_show_is_left_to_the_command() -> None:
    taps = "\n".join(f"tee -> tap{number}.cold" for number in range(MOST_DRAWN))
    report = plumbnet.check(system(f"street -> tee -> heater -> tap.hot\n{taps}"))
    (sentence,) = piping(Dossier(report, None, {}, (), {}))
    assert sentence == Paragraph(
        f"The piping has {MOST_DRAWN + 4} parts, too many for a picture on a page; the command plumbnet draw draws it "
        "on a sheet of its own."
    )


def test_tall_building_is_drawn_on_its_page_however_large_and_what_is_drawn_once_is_listed() -> None:
    report = tall(tower(storeys=14, shafts=8)).report
    assert len(report.system.parts) > MOST_DRAWN
    picture, table, *_ = piping(Dossier(report, None, {}, (), {}))
    assert isinstance(picture, PagePicture)
    assert isinstance(table, Table)
    assert table.rows[0][:2] == ("A", "112")
