"""Two reports, or two layouts, to what differs between them, and to what became of the comments of a review."""

from plumbnet.study.compare.applicants_word import SelfAccepted
from plumbnet.study.compare.comments_answered import CommentNow, CommentState
from plumbnet.study.compare.layout_revision import Changes, Named, Revision, revision
from plumbnet.study.compare.report_difference import Difference, Figure, HeaterChange, difference
from plumbnet.study.compare.review_file import LastReview, OldComment, last_review
from plumbnet.study.compare.rule_changes import RuleChange
from plumbnet.study.compare.whole_comparison import Comparison, comparison
from plumbnet.study.renaming import Alike

__all__ = [
    "Alike",
    "Changes",
    "CommentNow",
    "CommentState",
    "Comparison",
    "Difference",
    "Figure",
    "HeaterChange",
    "LastReview",
    "Named",
    "OldComment",
    "Revision",
    "RuleChange",
    "SelfAccepted",
    "comparison",
    "difference",
    "last_review",
    "revision",
]
