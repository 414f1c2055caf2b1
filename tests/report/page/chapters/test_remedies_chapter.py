"""The chapter of remedies."""

from dataclasses import replace

from conftest import system

import plumbnet
from plumbnet.report.page.chapters.remedies_chapter import cures
from plumbnet.report.page.page_content import PageBlock, PagePicture
from plumbnet.report.prose.prose_blocks import Heading, Paragraph, Points
from plumbnet.report.text.remedies_report import RELIEF_FIRST
from plumbnet.study.dossier.report_dossier import MOST_PICTURES, MOST_TOGETHER, MOST_WARM_UPS, dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def blocks(runs: str, **parts: str) -> list[PageBlock]:
    return list(cures(dossier(plumbnet.check(system(runs, **parts)))))


def test_remedies_come_with_the_layout_and_the_warm_up_then() -> None:
    _, heading, points, after, warmup = blocks(HOUSE, heater="relief: {pressure: 150 psi}, input: 40000 Btu/h")
    assert heading == Heading("heater", 3)
    assert isinstance(points, Points)
    assert points.texts[0].startswith("Fit an expansion tank of 5 gal")
    assert ", charged to 60 psi, " in points.texts[0]
    assert "Then heater is controlled at " in points.texts[0]
    assert isinstance(after, PagePicture)
    assert after.is_small
    assert isinstance(warmup, PagePicture)
    assert "climbs to 150 psi as it is, typical walls; to 150 psi as it is, rigid walls; to 7" in warmup.words
    assert warmup.draw().axes


def test_heater_without_input_says_why_there_is_no_warm_up() -> None:
    *_, last = blocks("street -> cv -> tee -> indirect -> tap.hot", indirect="relief: {pressure: 150 psi}")
    assert isinstance(last, Paragraph)
    assert last.text.startswith("There is no picture of the warm-up: indirect lacks an input")


def test_sealed_heater_is_told_that_a_relief_valve_comes_first() -> None:
    assert Paragraph(RELIEF_FIRST) in blocks(HOUSE)


def test_one_list_of_two_heaters_is_told_and_drawn_once() -> None:
    two = "street -> cv -> tee -> tee1 -> heater1 -> tap1.hot\ntee1 -> heater2 -> tap2.hot"
    found = blocks(two, heater1="relief: {pressure: 150 psi}", heater2="relief: {pressure: 150 psi}")
    assert [block.text for block in found if isinstance(block, Heading)] == [
        "heater1 and heater2, which share their water"
    ]
    assert sum(isinstance(block, PagePicture) and block.is_small for block in found) == 1


def test_nothing_is_said_where_no_heater_is_in_trouble() -> None:
    assert blocks("street -> tee -> heater -> tap.hot", heater="relief: {pressure: 150 psi}") == []


def test_large_layouts_are_sent_to_the_command() -> None:
    large = replace(dossier(plumbnet.check(system(HOUSE))), found=None)
    (sentence,) = cures(large)
    assert isinstance(sentence, Paragraph)
    assert sentence.text.endswith("the command plumbnet remedies looks in any.")


def test_warm_up_of_too_many_heaters_together_is_left_out() -> None:
    runs = "\n".join(f"tee -> heater{number} -> tap{number}.hot" for number in range(1, MOST_TOGETHER + 2))
    fields = {f"heater{number}": "relief: {pressure: 150 psi}" for number in range(1, MOST_TOGETHER + 2)}
    pictures = [block for block in blocks(f"street -> cv -> tee\n{runs}", **fields) if isinstance(block, PagePicture)]
    assert [picture.is_small for picture in pictures] == [True]


def test_of_many_heaters_a_few_are_drawn() -> None:
    count = MOST_PICTURES + 1
    runs = "\n".join(f"tee -> cv{number} -> heater{number} -> tap{number}.hot" for number in range(1, count + 1))
    fields = {f"heater{number}": "relief: {pressure: 150 psi}" for number in range(1, count + 1)}
    pictures = [block for block in blocks(f"street -> tee\n{runs}", **fields) if isinstance(block, PagePicture)]
    assert sum(picture.is_small for picture in pictures) == MOST_PICTURES
    assert sum(not picture.is_small for picture in pictures) == MOST_WARM_UPS
