"""A report to the same report on the layout in which some parts have other names."""

from collections.abc import Callable
from dataclasses import replace

from plumbnet.analysis import Report, analyse
from plumbnet.rules import Accepted, Claimed, Finding
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
    words: list[Accepted | Claimed] = [*report.accepted, *report.claimed]
    said = {_about(one.finding, names.name_now): one for one in words}
    found = [*again.findings, *(one.finding for one in again.accepted)]
    told = [(one, said.get(_about(one, _as_it_is))) for one in found]
    return replace(
        again,
        scenario=report.scenario,
        findings=tuple(one for one, word in told if not isinstance(word, Accepted)),
        accepted=tuple(replace(word, finding=one) for one, word in told if isinstance(word, Accepted)),
        claimed=tuple(replace(word, finding=one) for one, word in told if isinstance(word, Claimed)),
        idle=report.idle,
        own_acceptances=report.own_acceptances,
    )


def _about(finding: Finding, naming: Callable[[str], str]) -> tuple[str, str, frozenset[str]]:
    """What tells a finding from others, by the names that its parts are given; their order may be one of names."""
    parts = [naming(part) for part in finding.parts]
    return finding.name, parts[0], frozenset(parts)


def _as_it_is(name: str) -> str:
    return name
