"""Two reports to all that a comparison tells, the parts of the earlier named as the later names them."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout import Shown, shown
from plumbnet.study.compare.applicants_word import SelfAccepted, self_accepted
from plumbnet.study.compare.comments_answered import CommentNow, comments_now
from plumbnet.study.compare.layout_revision import Revision, revision
from plumbnet.study.compare.report_difference import Difference, difference
from plumbnet.study.compare.review_file import LastReview
from plumbnet.study.compare.rule_changes import RuleChange, rule_changes
from plumbnet.study.renaming import Alike, renamed_report, renames


@dataclass(frozen=True, slots=True)
class Comparison(Shown):
    """A layout and its revision: both reports, what differs in the answers, and what was changed for it.

    `told_before` is the earlier report with the names of the later one, which the difference is told by.
    `self_accepted` are findings that the later file accepts by itself, `rules` what changed in the rules. `review` is
    the last one, None where none is given, and `comments` what became of what it asked. `alike` are parts that stand
    in the place of others, with other values.
    """

    before: Report
    after: Report
    difference: Difference
    revision: Revision
    told_before: Report
    self_accepted: tuple[SelfAccepted, ...] = ()
    rules: tuple[RuleChange, ...] = ()
    review: LastReview | None = None
    comments: tuple[CommentNow, ...] = ()
    alike: tuple[Alike, ...] = ()

    @property
    def is_worse(self) -> bool:
        """Whether a heater became worse or an error is new, be it one that the later file accepts by itself."""
        return self.difference.is_worse or any(one.is_worse for one in self.self_accepted)

    @property
    def is_better(self) -> bool:
        """Whether nothing is worse, and a heater became better or an error is gone."""
        return self.difference.is_better and not self.is_worse

    def to_text(self) -> str:
        """What `plumbnet compare` prints of it; ends with a line break."""
        return shown(self, "text", str)


def comparison(before: Report, after: Report, review: LastReview | None = None) -> Comparison:
    """All that is to be told of a layout and its revision; words are in the units of the later.

    Parts are matched by name, and where one only got another name, by its pipes.
    """
    names = renames(before.system, after.system)
    told = renamed_report(before, names)
    return Comparison(
        before,
        after,
        difference(told, after),
        revision(before.system, after.system, names, units=after.facts.units),
        told,
        self_accepted(told, after),
        rule_changes(before, after),
        review,
        () if review is None else comments_now(review, after, names),
        names.alike,
    )
