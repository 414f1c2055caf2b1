"""A layout and its revision: what differs in the answers, and what was changed for it."""

from pathlib import Path

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.layout.yaml import bytes_of
from plumbnet.study.compare import Comparison, LastReview, comparison, last_review


def compare(old: Layout | Report, new: Layout | Report, *, review: str | Path | bytes | None = None) -> Comparison:
    """What a revision changed: in the layout, in verdicts, findings and figures; what became worse first.

    Each is a report, or what `check` makes one of; words are in the units of the later. `review` is the last review
    of the earlier one, as the path or the bytes of what `plumbnet review --format json` writes. Heaters and parts are
    matched by name, and what only got another name by its pipes. Raises what `check` does, and LayoutError or OSError
    for a review that cannot be read or is of another file.

    >>> compared = compare("systems/open-house.yaml", "systems/house-with-check.yaml")
    >>> compared.is_worse, [part.name for part in compared.revision.parts.added]
    (True, ['check'])
    >>> (heater,) = compared.difference.heaters
    >>> heater.before.verdict.value, heater.after.verdict.value
    ('open', 'trapped')
    """
    after = as_report(new)
    before = as_report(old, units=after.facts.units)
    return comparison(before, after, None if review is None else _read(review, before))


def _read(review: str | Path | bytes, before: Report) -> LastReview:
    if isinstance(review, bytes):
        return last_review(review, before, file="review")
    return last_review(bytes_of(review), before, file=str(review))
