"""The review sheet: every requirement with its answers, numbered comments, a cover to sign."""

from plumbnet.report.review.review_writer import ReviewFormat, review_file, review_printed

__all__ = ["ReviewFormat", "review_file", "review_printed"]
