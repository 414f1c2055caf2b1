from dataclasses import replace

from drawing_board import sketch

from plumbnet.drawing.items.schematic import Letters
from plumbnet.report.schematic.revision_letters import RevisionLetters
from plumbnet.report.schematic.schematic_contents import schematic_of, title_block, title_of

HOUSE = sketch("street -> cv -> heater -> tap.hot")


def test_title_block_names_file_rules_date_and_verdicts() -> None:
    assert [(row.name, row.words) for row in title_block(HOUSE.report, "2026-11-25")] == [
        ("file", "drawn.yaml"),
        ("rules", "General practice"),
        ("date", "2026-11-25"),
        ("heater", "SEALED"),
    ]


def test_no_date_is_printed_that_was_not_given() -> None:
    assert "date" not in {row.name for row in title_block(HOUSE.report, None)}


def test_scenario_is_named() -> None:
    report = replace(HOUSE.report, scenario="stop shut")
    assert ("scenario", "stop shut") in {(row.name, row.words) for row in title_block(report, None)}


def test_many_heaters_are_counted_rather_than_listed() -> None:
    runs = "\n".join(f"tee -> heater{n}" for n in range(1, 16))
    found = list(title_block(sketch(f"street -> tee\n{runs}").report, None))
    assert found[-1].words == "and 3 more heaters"
    assert len(found) == 2 + 12 + 1


def test_title_falls_back_on_the_file() -> None:
    assert title_of(HOUSE.report) == "drawn.yaml"


def test_what_a_revision_moved_is_marked_framed_and_told() -> None:
    marked = RevisionLetters(Letters({"cv": "N"}, {0: "A"}), {"cv": ("was check",)}, ": after")
    found = schematic_of(HOUSE.report, None, marked)
    assert found.title == "drawn.yaml: after"
    assert found.letters == marked.letters
    assert found.diagram.items["cv"].lines == ("cv", "was check")
    assert [name for name, item in found.diagram.items.items() if item.is_framed] == ["cv"]
    assert schematic_of(HOUSE.report).letters == Letters()
