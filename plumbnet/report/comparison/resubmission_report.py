"""What a reviewer reads first of a revision: what the applicant accepts by himself, other rules, what was asked."""

from collections import Counter
from collections.abc import Iterator

from plumbnet.layout.units import Units
from plumbnet.report.prose import Block, Paragraph, Points, Table
from plumbnet.report.review import ANSWERS, clause_with_state, found_in_words
from plumbnet.report.text import clause_in_words, counted
from plumbnet.rules import Accepted, Answered, AnswerWord, Claimed, Severity, rules_in_words
from plumbnet.study.compare import CommentNow, CommentState, Comparison, LastReview, RuleChange, SelfAccepted

OTHER_VALUES = "It was made by rules of the same name with other values; what was met then may be broken now."
_MOST_VALUES = 20
"""Values of changed rules that are told one by one."""


def first_to_read(compared: Comparison) -> Iterator[Block]:
    """Errors that only the applicant's own word keeps from counting, new ones first; none where there is none."""
    errors = [one for one in compared.self_accepted if one.accepted.finding.severity is Severity.ERROR]
    if errors:
        yield Points(tuple(map(_self_accepted_error, errors)))


def _self_accepted_error(one: SelfAccepted) -> str:
    finding = one.accepted.finding
    what = f"error {finding.name} ({finding.parts[0]})"
    told = f"{finding.text} {finding.advice} {clause_in_words(finding)}"
    said = f"{_where(one.accepted)}{_in_vain(one.accepted)}"
    if one.is_new:
        return f"new {what}, and accepted by the applicant {said}: {told}"
    return f"{what} stood before, and is accepted by the applicant now {said}: {told}"


def _where(accepted: Accepted | Claimed) -> str:
    """The line, in the layout or in the inspector's list, and the reason."""
    place = f"in line {accepted.line} " if accepted.line else ""
    place += f"of {accepted.file} " if accepted.file else ""
    return f'{place}("{accepted.reason}")'


def less_accepted(compared: Comparison) -> Iterator[str]:
    """New warnings and notes that count no more because the applicant accepts them, a sentence each."""
    for one in compared.self_accepted:
        finding = one.accepted.finding
        if one.is_new and finding.severity is not Severity.ERROR and isinstance(one.accepted, Accepted):
            what = f"new {finding.severity.value} {finding.name} ({finding.parts[0]})"
            yield f"{what}, and accepted by the applicant {_where(one.accepted)}."


def other_rules(compared: Comparison) -> Iterator[Block]:
    """What changed in the rules, value by value; none where they are the same."""
    if _is_of_other_values(compared):
        yield Paragraph(OTHER_VALUES, "last review")
    for change in compared.rules:
        yield Paragraph(_rules(change), change.circuit)
        values = [f"{one.field}: {one.before} -> {one.after}" for one in change.values[:_MOST_VALUES]]
        if len(change.values) > _MOST_VALUES:
            values.append(f"and {len(change.values) - _MOST_VALUES} more")
        if change.clauses:
            values.append(f"{counted(change.clauses, 'clause')} told otherwise than before")
        if values:
            yield Points(tuple(values))


def _is_of_other_values(compared: Comparison) -> bool:
    """Whether the last review was made by a profile of that name that was not what it is."""
    review = compared.review
    return bool(review and review.rules_sha256 and review.rules_sha256 != compared.before.rules.sha256)


def _rules(change: RuleChange) -> str:
    if change.is_other_profile:
        return f"Judged by {change.before.in_full} before, and by {change.after.in_full} now."
    sums = f"SHA-256 {change.before.sha256} before, {change.after.sha256} now"
    return f"{change.after.in_full} is not what it was: {sums}."


def what_was_asked(compared: Comparison) -> Iterator[Block]:
    """Every comment of the last review with what became of it, then the new ones; none where no review is given."""
    if compared.review is None:
        return
    yield Paragraph(_made(compared.review), "last review")
    counts = Counter(one.state for one in compared.comments)
    told = [f"{counts[state]} {state.value}" for state in (CommentState.ANSWERED, CommentState.OPEN, CommentState.NEW)]
    yield Paragraph(", ".join(told) + ".", "comments")
    if compared.comments:
        rows = tuple(_row(one, compared.after.facts.units) for one in compared.comments)
        yield Table(("no.", "", "requirement", "now"), rows)


def _made(review: LastReview) -> str:
    by = f", by {review.reviewer}" if review.reviewer else ""
    date = f", {review.date}" if review.date else ""
    return f"{review.file}, rules {rules_in_words(review.rules)}{by}{date}"


def _row(one: CommentNow, units: Units) -> tuple[str, ...]:
    about = f"{one.name} ({', '.join(one.parts)})" if one.parts else one.name
    return str(one.number), one.state.value, f"{about}{_called_before(one)}", _now(one, units)


def _called_before(one: CommentNow) -> str:
    """What the parts of a comment were called in the review, where that was otherwise."""
    if one.asked is None or not one.asked.parts or not one.parts or one.asked.parts[0] == one.parts[0]:
        return ""
    return f"; {one.asked.parts[0]} in the review"


def _now(one: CommentNow, units: Units) -> str:
    """What is answered, with value against bound where there is one, what to do, and the applicant's word on it."""
    told = [one.text if one.now is None else _answer(one.now, units)]
    if one.now is not None and one.now.finding is not None:
        told += [one.now.finding.advice, clause_with_state(one.now.ruling)]
    if one.accepted is not None:
        told.append(_word(one.accepted))
    return " ".join(told)


def _word(said: Accepted | Claimed) -> str:
    """Who accepts it, and whether that counts."""
    return f"Accepted by the {said.by} {_where(said)}{_in_vain(said)}."


def _in_vain(said: Accepted | Claimed) -> str:
    """Why a word does not count; nothing where it does."""
    return f", which does not count ({said.why})" if isinstance(said, Claimed) else ""


def _answer(now: Answered, units: Units) -> str:
    """The sentence of a broken one; of any other the answer in a word, and what it rests on."""
    if now.word is AnswerWord.BROKEN:
        return now.text
    found = found_in_words(now, units)
    return found if now.word is AnswerWord.UNTOLD else ": ".join(filter(None, (ANSWERS[now.word], found)))
