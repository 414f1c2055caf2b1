"""A report to the same report on the layout in which some parts have other names."""

from dataclasses import replace

from plumbnet.analysis import Report, analyse
from plumbnet.rules import Accepted
from plumbnet.study.renaming.part_renames import Renames
from plumbnet.study.renaming.renamed_system import renamed_system


def renamed_report(report: Report, names: Renames) -> Report:
    """The report with parts named as `names` has them; what was accepted, by whomever, stays so.

    Cost: the layout is analysed again, unless no name changes.
    """
    if not names.names:
        return report
    system = renamed_system(report.system, names.name_now)
    again = analyse(system, report.profile, units=report.facts.units)
    found = [*again.findings, *(one.finding for one in again.accepted)]
    said = {_about(names, one): one for one in report.accepted}
    return replace(
        again,
        scenario=report.scenario,
        findings=tuple(one for one in found if (one.name, one.parts) not in said),
        accepted=tuple(replace(said[one.name, one.parts], finding=one) for one in found if (one.name, one.parts) in said),
    )


def _about(names: Renames, accepted: Accepted) -> tuple[str, tuple[str, ...]]:
    finding = accepted.finding
    return finding.name, tuple(map(names.name_now, finding.parts))
