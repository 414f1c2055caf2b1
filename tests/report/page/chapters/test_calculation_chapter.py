"""The chapter of calculation."""

from conftest import system

import plumbnet
from plumbnet.report.page.chapters.calculation_chapter import calculation
from plumbnet.report.page.page_content import PageBlock, PagePicture
from plumbnet.report.prose.prose_blocks import Heading, Paragraph, Steps
from plumbnet.study.dossier.report_dossier import MOST_SHEETS, dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def blocks(runs: str, **parts: str) -> list[PageBlock]:
    return list(calculation(dossier(plumbnet.check(system(runs, **parts)))))


def test_sheet_stands_under_the_chapter_with_every_step_and_a_chart() -> None:
    found = blocks(HOUSE, heater="relief: {pressure: 150 psi}")
    levels = [block.level for block in found if isinstance(block, Heading)]
    assert (levels[0], min(levels), max(levels)) == (3, 3, 5)
    assert any(isinstance(block, Steps) for block in found)
    chart = found[-1]
    assert isinstance(chart, PagePicture)
    assert chart.words == "The smallest tank for heater against the highest pressure allowed: 3.97 gal at 80 psi."
    assert chart.draw().axes


def test_what_the_page_says_once_is_not_said_on_every_sheet() -> None:
    labels = {block.label for block in blocks(HOUSE) if isinstance(block, Paragraph)}
    assert "Method" in labels
    assert not {"File", "Program", "Rules", "Building"} & labels


def test_heater_for_which_no_tank_will_do_has_no_chart() -> None:
    assert not any(isinstance(block, PagePicture) for block in blocks(HOUSE, street="pressure: 95 psi"))


def test_open_heater_has_its_sheet_and_no_chart() -> None:
    found = blocks("street -> tee -> heater -> tap.hot")
    assert any(isinstance(block, Steps) for block in found)
    assert not any(isinstance(block, PagePicture) for block in found)


def test_of_many_heaters_the_rest_is_left_to_the_command() -> None:
    runs = "\n".join(f"tee -> heater{number} -> tap{number}.hot" for number in range(1, MOST_SHEETS + 3))
    found = blocks(f"street -> tee\n{runs}")
    assert found[-1] == Paragraph("The command plumbnet size prints the sheets of the other 2 heaters.")
