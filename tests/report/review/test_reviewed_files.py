"""All that a review of files comes to."""

from conftest import system

import plumbnet
from plumbnet.layout.yaml.fault import Fault
from plumbnet.report.output.writer import Noted, Unread
from plumbnet.report.review.review_writer import review_printed
from plumbnet.report.review.reviewed_files import ReviewedFiles
from plumbnet.study.review.review_sheet import review_of


def test_no_file_is_missing_from_any_form() -> None:
    house = review_of(plumbnet.check(system("street -> heater -> tap.hot")))
    bad = Unread("bad.yaml", (Fault(1, 1, "not a layout"),), "bad.yaml:1:1: not a layout")
    notes = Noted("notes.yaml", "not a layout", (Fault(0, 0, "no key plumbnet at its top"),))
    files = ReviewedFiles((house,), (bad,), (notes,))
    assert files.count == 3
    for form in ("text", "json", "csv"):
        printed = review_printed(files, form)
        assert all(name in printed for name in ("drawn.yaml", "bad.yaml", "notes.yaml")), form
