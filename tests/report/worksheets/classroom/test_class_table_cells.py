import csv
import io

from study_results import ADA, BEN

from plumbnet.report.worksheets.classroom.class_table_cells import CLASS_COLUMNS, class_csv
from plumbnet.study.training.class_table import class_rows


def test_row_to_each_belief_and_apprentice_that_does_nothing_in_a_spreadsheet() -> None:
    text = class_csv(class_rows({"=Ada": ADA, "Ben": BEN}))
    header, *rows = csv.reader(io.StringIO(text))
    assert tuple(header) == CLASS_COLUMNS
    assert rows == [
        ["meter-is-no-valve", "1", "A meter is no valve.", "'=Ada", "2", "1", "1", "2026-03-02", "0"],
        ["check-passed-over", "0", "A check on the way was passed over.", "'=Ada", "1", "0", "0", "2026-03-02", "0"],
        ["check-passed-over", "0", "A check on the way was passed over.", "Ben", "1", "1", "0", "2026-03-01", "1"],
    ]
