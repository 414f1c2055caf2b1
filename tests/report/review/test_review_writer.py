"""Reviews as they are printed and handed over."""

import io

from conftest import system
from pypdf import PdfReader

import plumbnet
from plumbnet.report.review.review_writer import review_file, review_printed
from plumbnet.report.review.reviewed_files import ReviewedFiles
from plumbnet.study.review.review_sheet import review_of

HOUSE = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
REVIEW = review_of(plumbnet.check(system(HOUSE)))
ONE = ReviewedFiles((REVIEW,))


def test_text_has_comments_and_sheet_and_no_picture() -> None:
    text = review_printed(ONE, "text")
    assert text.startswith("Review: drawn.yaml\n==================\n")
    assert "\n1. error: trapped-expansion: heater and cv, line " in text
    assert "\n     1  BROKEN          heater (line " in text
    assert "The piping" not in text
    assert text.endswith("never plug, cap or remove one.\n")


def test_data_is_one_document_or_one_table() -> None:
    assert review_printed(ONE, "json").startswith('{\n "plumbnet": ')
    assert review_printed(ONE, "csv").startswith("file,number,requirement,")


def test_page_is_the_same_bytes_each_time_and_a_pdf_has_the_picture_and_the_words() -> None:
    assert review_file(ONE, "html") == review_file(ONE, "html")
    assert review_file(ONE, "html").startswith(b"<!DOCTYPE html>")
    content = review_file(ReviewedFiles((REVIEW, REVIEW)), "pdf")
    sheets = [page.extract_text() for page in PdfReader(io.BytesIO(content)).pages]
    assert "Review of 2 files" in sheets[0]
    assert sum("drawn.yaml: Cover" in sheet for sheet in sheets) == 2
    letter = PdfReader(io.BytesIO(content)).pages[0].mediabox
    assert (float(letter.width), float(letter.height)) == (612.0, 792.0)


def test_metric_reviews_are_on_a4() -> None:
    metric = review_of(plumbnet.check(system(HOUSE), units="metric"))
    sheet = PdfReader(io.BytesIO(review_file(ReviewedFiles((metric,)), "pdf"))).pages[0].mediabox
    assert (round(float(sheet.width)), round(float(sheet.height))) == (595, 842)
