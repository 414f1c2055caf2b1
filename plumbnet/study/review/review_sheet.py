"""A report to its review: what each requirement answers, the comments, and what is to be seen on site."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.rules import Answered, AnswerWord, SiteRuling, answers_of
from plumbnet.study.review.review_comments import Comment, comments


@dataclass(frozen=True, slots=True)
class Review:
    """The review of one layout; `reviewer` and `date` are printed as they are given."""

    report: Report
    answers: tuple[Answered, ...]
    comments: tuple[Comment, ...]
    reviewer: str = ""
    date: str = ""

    @property
    def counts(self) -> Mapping[AnswerWord, int]:
        """How many subjects have which answer."""
        return Counter(one.word for one in self.answers)

    @property
    def site(self) -> tuple[SiteRuling, ...]:
        """What no layout can tell and is to be seen on site."""
        return tuple(dict.fromkeys(one for profile in self.report.rules.profiles for one in profile.site.values()))

    def number_of(self, answered: Answered) -> int | None:
        """The number of the comment that an answer is; None where it is none."""
        return next((one.number for one in self.comments if one.answered is answered), None)


def review_of(report: Report, *, reviewer: str = "", date: str = "") -> Review:
    """The review of what a report is on; findings that it does not count are no comments."""
    answers = tuple(answers_of(report.facts, report.rules))
    return Review(report, answers, tuple(comments(answers, report.accepted)), reviewer, date)
