from study_results import ADA, BEN

from plumbnet.report.prose import Paragraph
from plumbnet.report.worksheets.classroom.class_blocks import class_blocks, class_text
from plumbnet.study.training.class_table import class_rows

ROWS = class_rows({"Ada": ADA, "Ben": BEN})


def test_table_tells_who_held_what_and_where_the_layout_is() -> None:
    text = class_text(ROWS, ["Ada", "Ben"])
    lines = [line.split("  ") for line in text.splitlines()]
    assert [cell.strip() for cell in next(line for line in lines if line[0] == "A meter is no valve.") if cell] == [
        "A meter is no valve.",
        "1 of 1",
        "1 of 2",
    ]
    assert "1 of 1 *" in text
    assert "A layout that refutes one: plumbnet beliefs meter-is-no-valve." in text


def test_class_that_held_nothing_is_told_so() -> None:
    assert list(class_blocks([], ["Ada"])) == [Paragraph("Nobody held anything that can be told here.")]
