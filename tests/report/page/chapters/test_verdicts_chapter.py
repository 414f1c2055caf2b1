"""The chapter of verdicts."""

from conftest import system

import plumbnet
from plumbnet.report.page.chapters.verdicts_chapter import MOST_STORIES, summary, verdicts
from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose.prose_blocks import Paragraph, Table
from plumbnet.study.dossier.report_dossier import Dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def blocks(runs: str, **parts: str) -> list[PageBlock]:
    report = plumbnet.check(system(runs, **parts))
    return [*summary(report), *verdicts(Dossier(report, None, {}, (), {}))]


def test_sum_comes_first_then_the_table_then_each_story() -> None:
    summary, table, entry = blocks(HOUSE, heater="relief: {pressure: 150 psi, temperature: 210 degF}")
    assert summary == Paragraph("1 heater: 1 trapped. Findings: 1 error.")
    assert isinstance(table, Table)
    assert table.rows[0][:4] == ("heater", "trapped", "60 psi", "80 psi")
    assert isinstance(entry, Entry)
    assert (entry.mark, entry.title) == ("TRAPPED", "heater (storage heater, line 11)")
    assert entry.told[0].label == "because"
    assert entry.lights == ("heater", "cv")


def test_worst_verdict_is_counted_first() -> None:
    two = "street -> tee -> heater1 -> tap1.hot\ntee -> cv -> heater2 -> tap2.hot"
    summary, *_ = blocks(
        two,
        heater1="relief: {pressure: 150 psi, temperature: 210 degF}",
        heater2="relief: {pressure: 150 psi, temperature: 210 degF}",
    )
    assert isinstance(summary, Paragraph)
    assert summary.text.startswith("2 heaters: 1 trapped and 1 open.")


def test_layout_without_heaters_says_so_and_no_more() -> None:
    assert blocks("street -> tap.cold") == [Paragraph("Nothing here heats water. No findings.")]


def test_of_many_heaters_those_in_trouble_are_told_of() -> None:
    count = MOST_STORIES + 5
    runs = "\n".join(f"tee -> heater{number} -> tap{number}.hot" for number in range(1, count))
    sizes = {f"heater{number}": f"volume: {20 + number} gal" for number in range(1, count + 1)}
    found = blocks(f"street -> tee\n{runs}\ntee -> cv -> heater{count} -> tap{count}.hot", **sizes)
    stories = [block for block in found if isinstance(block, Entry)]
    assert len(stories) == MOST_STORIES
    assert stories[-1].title.startswith(f"heater{count} ")
    assert any(isinstance(one, Paragraph) and one.text.startswith("5 more rows") for one in found)
    assert found[-1] == Paragraph(
        "5 more heaters stand in the table only; the command plumbnet check tells of them all."
    )
