"""A layout written with a remedy made in it, in a few lines: what was done, what came of it, what to see to."""

import textwrap

from plumbnet.analysis import Report
from plumbnet.layout.yaml import quoted, visible
from plumbnet.report.text.findings_text import WIDTH
from plumbnet.report.text.heater_text import CAUTION
from plumbnet.report.text.remedies_report import remedy_outcome
from plumbnet.rules import listed
from plumbnet.study.remedies import Remedy


def applied_text(before: Report, after: Report, chosen: Remedy, file: str) -> str:
    """What was written to `file`: the remedy, its outcome, scenarios that it has no more; ends with a line break."""
    old = before.system.record.file
    lost = [name for name in after.system.faulty_scenarios if name in before.system.scenarios]
    lines = [visible(f"{file}: {old} with this made in it:"), *_hung(chosen.title)]
    lines += _hung(remedy_outcome(before.facts, chosen))
    if lost:
        lines += _hung(f"No longer to be made: {_scenarios(lost)}; plumbnet check says why.")
    lines += ["", *textwrap.wrap(visible(f"What differs: plumbnet compare {old} {file}"), WIDTH)]
    return "\n".join([*lines, "", *textwrap.wrap(CAUTION, WIDTH)]) + "\n"


def _scenarios(names: list[str]) -> str:
    return f"the scenario{'s' if len(names) > 1 else ''} {listed([visible(quoted(name)) for name in names])}"


def _hung(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="  ", subsequent_indent="  ", break_on_hyphens=False)
