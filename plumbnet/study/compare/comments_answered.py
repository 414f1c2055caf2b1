"""A review and the report on the revision to what became of each comment, and to those that are new."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from plumbnet.analysis import Report
from plumbnet.rules import Accepted, Answered, AnswerWord, Claimed, answers_of
from plumbnet.study.compare.applicants_word import inspectors_word_on, word_on
from plumbnet.study.compare.review_file import LastReview, OldComment
from plumbnet.study.compare.subject_match import Subject, leading_subject, paired_subjects, whole_subject
from plumbnet.study.renaming import Renames
from plumbnet.study.review import reading_order

_OPEN = (AnswerWord.BROKEN, AnswerWord.UNTOLD)
NO_FINDING = "it is not found any more"
"""Said of a comment whose subject no requirement speaks of now."""


class CommentState(StrEnum):
    """What became of a comment."""

    OPEN = "still open"
    NEW = "new"
    ANSWERED = "answered"


@dataclass(frozen=True, slots=True)
class CommentNow:
    """A comment of the last review, or a new one, as it stands in the revision.

    `asked` is the comment, None of a new one; `now` what its requirement answers now, None where it speaks of that
    subject no more, and `text` then says why. `parts` have their names of now. `accepted` is the applicant's own word
    on it, which closes no comment, or the inspector's, which does.
    """

    number: int
    name: str
    parts: tuple[str, ...]
    state: CommentState
    text: str
    asked: OldComment | None = None
    now: Answered | None = None
    accepted: Accepted | Claimed | None = None


def comments_now(review: LastReview, after: Report, names: Renames) -> tuple[CommentNow, ...]:
    """Every comment of the review by its number, then what is broken or cannot be told and was not asked before.

    New ones are numbered on from the highest, as a review orders them. A comment follows its subject through another
    name. What was accepted in the last review, and still is, is no new comment.
    """
    answers = list(answers_of(after.facts, after.rules))
    standing = [one for one in answers if one.word in _OPEN]
    subjects = [_subject_now(one, names) for one in review.comments]
    pairs = paired_subjects(subjects, [_subject(one) for one in standing])
    told = []
    for at, (comment, (_, parts)) in enumerate(zip(review.comments, subjects, strict=True)):
        now = standing[pairs[at]] if at in pairs else None
        told.append(_open(comment, now, after) if now else _closed(comment, parts, answers, after))
    taken = set(pairs.values())
    fresh = [one for at, one in enumerate(standing) if at not in taken and not _is_settled(one, review, after, names)]
    fresh.sort(key=reading_order)
    new = (_new(number, one, after) for number, one in enumerate(fresh, review.highest + 1))
    return (*told, *new)


def _subject_now(asked: OldComment, names: Renames) -> Subject:
    """What a requirement of the review is about, by the names of now."""
    return asked.name, tuple(map(names.name_now, asked.parts))


def _subject(now: Answered) -> Subject:
    return now.rule.name, now.parts


def _is_settled(now: Answered, review: LastReview, after: Report, names: Renames) -> bool:
    """Whether the inspector accepts it, or it was accepted in the review, no comment of it, and is accepted still."""
    if now.finding is None or now.finding in after.findings:
        return False
    return inspectors_word_on(after, now.finding) is not None or any(
        _subject_now(one, names) == _subject(now)
        for one in review.requirements
        if one.number is None and one.answer is AnswerWord.BROKEN
    )


def _open(comment: OldComment, now: Answered, after: Report) -> CommentNow:
    """A comment whose requirement is not met, unless the inspector accepts that."""
    told = replace(_new(comment.number or 0, now, after), state=CommentState.OPEN, asked=comment)
    own = None if now.finding is None else inspectors_word_on(after, now.finding)
    return told if own is None else replace(told, state=CommentState.ANSWERED, accepted=own)


def _new(number: int, now: Answered, after: Report) -> CommentNow:
    accepted = None if now.finding is None else word_on(after, now.finding)
    return CommentNow(number, now.rule.name, now.parts, CommentState.NEW, now.text, None, now, accepted)


def _closed(comment: OldComment, parts: tuple[str, ...], answers: Sequence[Answered], after: Report) -> CommentNow:
    """A comment that no requirement repeats: its subject does what is asked, need not, or is gone.

    What could not be told stays open as long as no requirement says that it is met.
    """
    now = _answer_about(comment, parts, answers)
    number, name = comment.number or 0, comment.name
    gone = next((part for part in parts if part not in after.system.parts), None)
    if now is not None:
        return CommentNow(number, name, parts, CommentState.ANSWERED, now.text, comment, now)
    if parts and parts[0] == gone:
        return CommentNow(number, name, parts, CommentState.ANSWERED, f"{gone} is no longer there", comment)
    if comment.answer is AnswerWord.UNTOLD:
        return CommentNow(number, name, parts, CommentState.OPEN, "it still cannot be told", comment)
    return CommentNow(number, name, parts, CommentState.ANSWERED, NO_FINDING, comment)


def _answer_about(comment: OldComment, parts: tuple[str, ...], answers: Sequence[Answered]) -> Answered | None:
    """What the requirement of a comment answers now for its subject, or else for one with the same leading part."""
    about = [one for one in answers if one.rule.name == comment.name and one.parts and one.word not in _OPEN]
    for key in (whole_subject, leading_subject):
        found = next((one for one in about if key(_subject(one)) == key((comment.name, parts))), None)
        if found is not None:
            return found
    return None
