"""The last chapters: what was taken for granted, and by which program, rules and file the page was made."""

from collections.abc import Iterator

from plumbnet.analysis import Report
from plumbnet.report.output import accepts_line, program_build, program_line
from plumbnet.report.page.page_content import PageBlock
from plumbnet.report.prose import Paragraph, Points, Table, listed_whole
from plumbnet.rules import Rules, rules_in_words
from plumbnet.study.dossier import Dossier


def assumptions_chapter(dossier: Dossier) -> Iterator[PageBlock]:
    """What the file does not say; none where it says everything."""
    assumed = dossier.report.facts.assumed
    if assumed:
        yield Paragraph("Where the file says nothing, this was taken:")
        yield Points(tuple(f"{words}: {listed_whole(parts)}" for words, parts in assumed.items()))


def _rules(rules: Rules) -> Iterator[tuple[str, str]]:
    """The profiles, their hashes, and who named them; of several each with its circuit."""
    for profile in rules.profiles:
        circuit = "" if rules.is_one else f", {'drinking water' if profile is rules.water else 'heating circuits'}"
        yield f"rule profile{circuit}", profile.in_full
        yield f"SHA-256 of the profile{circuit}", profile.sha256
    yield "rules named by", rules_in_words(rules.named_by)


def record_chapter(dossier: Dossier) -> Iterator[PageBlock]:
    """Versions and hashes, so that the page can be made again."""
    yield Table(("what", "value"), tuple(record_rows(dossier.report, date=dossier.date)))


def record_rows(report: Report, *, date: str = "") -> Iterator[tuple[str, str]]:
    """Everything by which a page can be made again, and what it was judged by: labels, and what stands under them."""
    source = report.system.record
    yield "file", source.file
    yield "SHA-256 of the file", source.sha256 or "read from no file"
    yield from ((f"job: {name}", words) for name, words in report.system.job.said())
    if report.scenario is not None:
        yield "scenario", report.scenario
    yield from _rules(report.rules)
    yield from _limits(report)
    if report.own_acceptances is not None:
        yield "accepts", accepts_line(report.own_acceptances)
    yield "program", f"{program_line()}, build {program_build()}"
    yield "water", "IAPWS-IF97; up to 180 degC and 30 bar absolute interpolated from it, to 1e-8"
    if date:
        yield "date", date


def _limits(report: Report) -> Iterator[tuple[str, str]]:
    """The highest pressure that the rules allow where people draw water, heated, with its clause."""
    for profile in report.rules.profiles:
        ruling = profile.distribution_limit
        yield "limit", f"{report.facts.pressure(ruling.value_pa)} [{ruling.clause}]"
