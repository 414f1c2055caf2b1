"""A layout as a plan checker reads it: every requirement answered, and what to ask of the applicant, numbered."""

from plumbnet.study.review.review_comments import Comment, comments, reading_order
from plumbnet.study.review.review_sheet import Review, review_of

__all__ = ["Comment", "Review", "comments", "reading_order", "review_of"]
