from study_results import ADA, BEN

from plumbnet.report.worksheets.classroom.class_sheet import class_page
from plumbnet.study.training.class_table import class_rows

NAMED = {"<b>Ada</b>": ADA, "Ben": BEN}


def test_page_holds_the_table_and_the_caution_and_no_markup_of_a_name() -> None:
    page = class_page(class_rows(NAMED), list(NAMED), "html", is_metric=False).decode()
    assert "A meter is no valve." in page
    assert "&lt;b&gt;Ada" in page
    assert "<b>Ada" not in page


def test_page_may_be_printed() -> None:
    assert class_page(class_rows(NAMED), list(NAMED), "pdf", is_metric=True).startswith(b"%PDF")
