"""What-ifs as text: one before and after side by side, several as a row each; what is worse is told first."""

from collections.abc import Iterator, Sequence

from plumbnet.report.output import record_blocks
from plumbnet.report.prose import Block, Heading, Paragraph, Points, Table, document_text, pressure_in_words
from plumbnet.report.studies.change_phrases import changes_in_words
from plumbnet.report.studies.difference_report import OTHER, WORSE, difference_rows, difference_told, mark
from plumbnet.report.studies.differing_figures import differing_told, left_rows
from plumbnet.report.text import CAUTION
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.whatif import WhatIf

_LEGEND = f"{WORSE} is worse than the layout as it is, {OTHER} is otherwise different."
_ACROSS = 3
"""Heaters that stand side by side in one table."""


def whatifs_text(found: Sequence[WhatIf]) -> str:
    """One what-if in full, several in a table; ends with a line break."""
    blocks = _one(found[0]) if len(found) == 1 else _several(found)
    return document_text([*blocks, *record_blocks(found[0].before), Paragraph(CAUTION)])


def whatif_text(one: WhatIf) -> str:
    """One what-if, before and after side by side."""
    return whatifs_text([one])


def title(one: WhatIf) -> str:
    """What a what-if is called: its scenario, or the changes themselves."""
    return changes_in_words(one.changes) if one.scenario is None else one.scenario


def _one(one: WhatIf) -> Iterator[Block]:
    yield from _heading(one, f"what if: {title(one)}")
    if one.note:
        yield Paragraph(one.note, "supposed")
    if one.scenario is not None:
        yield Paragraph(changes_in_words(one.changes), "changes")
    yield Points(tuple(difference_told(one.difference, one.after.facts)))
    for heater in one.difference.heaters:
        yield Heading(heater.name)
        facts = one.before.facts, one.after.facts
        rows = (*difference_rows(heater, *facts), *left_rows(heater, *facts))
        yield Table((" ", "", "before", "after"), rows)
    yield Paragraph(_LEGEND)


def _several(found: Sequence[WhatIf]) -> Iterator[Block]:
    yield from _heading(found[0], f"{len(found)} what-ifs")
    yield from side_by_side(found)


def side_by_side(found: Sequence[WhatIf]) -> Iterator[Block]:
    """What-ifs of one layout in a table, a row each, and what of each is worth telling, those that are worse first."""
    names = list(dict.fromkeys(heater.name for one in found for heater in _in_order(one)))
    for start in range(0, len(names), _ACROSS):
        across = names[start : start + _ACROSS]
        lines = [("as it is", *(_cell_before(found[0], name) for name in across))]
        lines += [(title(one), *(_cell(one, name) for name in across)) for one in found]
        yield Table(("scenario", *across), tuple(lines))
    yield Paragraph(_LEGEND)
    for one in sorted(found, key=lambda each: not each.difference.is_worse):
        yield Heading(title(one))
        if one.note:
            yield Paragraph(one.note, "supposed")
        facts = one.before.facts, one.after.facts
        figures = (said for heater in one.difference.heaters for said in differing_told(heater, *facts))
        yield Points((*difference_told(one.difference, one.after.facts), *figures))


def _heading(one: WhatIf, what: str) -> Iterator[Block]:
    system, rules = one.before.system, one.before.rules
    yield Heading(f"{system.title or system.record.file}: {what}", 1)
    yield Paragraph(system.record.file, "file")
    yield Paragraph(rules.in_full, "rules")


def _in_order(one: WhatIf) -> Iterator[HeaterFacts]:
    yield from one.before.heaters
    yield from one.after.heaters


def _cell_before(one: WhatIf, name: str) -> str:
    return _summary(next((heater for heater in one.before.heaters if heater.name == name), None), one)


def _cell(one: WhatIf, name: str) -> str:
    change = next((heater for heater in one.difference.heaters if heater.name == name), None)
    if change is None:  # a heater of another what-if, that is neither before nor after this one
        return _summary(None, one)
    return f"{mark(change)} {_summary(change.after, one)}".strip()


def _summary(heater: HeaterFacts | None, one: WhatIf) -> str:
    """Verdict and settled pressure."""
    if heater is None:
        return "not there"
    if heater.settled_pa is None:
        return heater.verdict.value
    return f"{heater.verdict.value}, {pressure_in_words(heater.settled_pa, one.after.facts.units)}"
