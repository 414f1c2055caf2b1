"""A layout and its revision: what differs in the answers, and what was changed for it."""

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report
from plumbnet.report.studies import Comparison
from plumbnet.study.compare import difference, revision


def compare(old: Layout | Report, new: Layout | Report) -> Comparison:
    """What a revision changed: in the layout, in verdicts, findings and figures; what became worse first.

    Each is a report, or what `check` makes one of; words are in the units of the later. Heaters and parts are matched
    by name. Raises what `check` does.

    >>> compared = compare("systems/open-house.yaml", "systems/house-with-check.yaml")
    >>> compared.difference.is_worse, [part.name for part in compared.revision.parts.added]
    (True, ['check'])
    >>> (heater,) = compared.difference.heaters
    >>> heater.before.verdict.value, heater.after.verdict.value
    ('open', 'trapped')
    """
    after = as_report(new)
    before = as_report(old, units=after.facts.units)
    changed = revision(before.system, after.system, units=after.facts.units)
    return Comparison(before, after, difference(before, after), changed)
