"""A report to the same report on the layout in which some parts have other names."""

from dataclasses import replace

from plumbnet.analysis import Report, analyse
from plumbnet.study.renaming.part_renames import Renames
from plumbnet.study.renaming.system_renaming import renamed_system


def renamed_report(report: Report, names: Renames) -> Report:
    """The report with parts named as `names` has them; what was accepted, by whomever, stays so.

    Cost: the layout is analysed again, unless no name changes.
    """
    if not names.names:
        return report
    system = renamed_system(report.system, names.name_now)
    again = analyse(system, report.rules, units=report.facts.units)
    found = [*again.findings, *(one.finding for one in again.accepted)]
    said = {(one.finding.name, names.name_now(one.finding.parts[0])): one for one in report.accepted}
    words = [(one, said.get((one.name, one.parts[0]))) for one in found]
    return replace(
        again,
        scenario=report.scenario,
        findings=tuple(one for one, word in words if word is None),
        accepted=tuple(replace(word, finding=one) for one, word in words if word is not None),
    )
