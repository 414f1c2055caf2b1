"""The review sheet: every requirement with its answers, numbered comments, a cover to sign."""

from plumbnet.report.review.review_words import ANSWERS, clause_with_state, found_in_words
from plumbnet.report.review.review_writer import ReviewFormat, review_file, review_printed
from plumbnet.report.review.reviewed_files import ReviewedFiles

__all__ = [
    "ANSWERS",
    "ReviewFormat",
    "ReviewedFiles",
    "clause_with_state",
    "found_in_words",
    "review_file",
    "review_printed",
]
