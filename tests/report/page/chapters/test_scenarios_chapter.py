"""The chapter of scenarios."""

import yaml
from conftest import layout, system

import plumbnet
from plumbnet.report.page.chapters.scenarios_chapter import scenarios
from plumbnet.report.prose.prose_blocks import Heading, Paragraph, Table
from plumbnet.study.dossier.report_dossier import dossier

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def test_every_scenario_is_a_row_and_told_under_a_heading_below_the_chapter_s() -> None:
    document = yaml.safe_load(layout(HOUSE, heater="relief: {pressure: 150 psi}"))
    document["scenarios"] = {
        "unchecked": {"change": [{"remove": "cv"}]},
        "skyward": {"change": [{"set": {"part": "tap", "elevation": "3000 ft"}}]},
    }
    blocks = list(scenarios(dossier(plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode())))))
    table = blocks[0]
    assert isinstance(table, Table)
    assert [row[0] for row in table.rows] == ["as it is", "unchecked"]
    assert "open" in table.rows[1][1]
    assert {block.level for block in blocks if isinstance(block, Heading)} == {3}
    last = blocks[-1]
    assert isinstance(last, Paragraph)
    assert last.label == "skyward"
    assert last.text.startswith("nothing can be computed: heater")


def test_file_without_scenarios_has_no_chapter() -> None:
    assert list(scenarios(dossier(plumbnet.check(system(HOUSE))))) == []
