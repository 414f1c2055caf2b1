"""The last chapters: what was taken for granted, and by which program, rules and file the page was made."""

from collections.abc import Iterator

from plumbnet.report.output import program_line
from plumbnet.report.page.page_content import PageBlock
from plumbnet.report.prose import Paragraph, Points, Table
from plumbnet.rules import Rules, listed, rules_in_words
from plumbnet.study.dossier import Dossier


def assumptions_chapter(dossier: Dossier) -> Iterator[PageBlock]:
    """What the file does not say; none where it says everything."""
    assumed = dossier.report.facts.assumed
    if assumed:
        yield Paragraph("Where the file says nothing, this was taken:")
        yield Points(tuple(f"{words}: {listed(parts)}" for words, parts in assumed.items()))


def _rules(rules: Rules) -> Iterator[tuple[str, str]]:
    """The profiles, their hashes, and who named them; of several each with its circuit."""
    for profile in rules.profiles:
        circuit = "" if rules.is_one else f", {'drinking water' if profile is rules.water else 'heating circuits'}"
        yield f"rule profile{circuit}", profile.in_full
        yield f"SHA-256 of the profile{circuit}", profile.sha256
    yield "rules named by", rules_in_words(rules.named_by)


def record_chapter(dossier: Dossier) -> Iterator[PageBlock]:
    """Versions and hashes, so that the page can be made again."""
    report = dossier.report
    source = report.system.record
    rows = [
        ("file", source.file),
        ("SHA-256 of the file", source.sha256 or "read from no file"),
        *_rules(report.rules),
        ("program", program_line()),
        ("water", "IAPWS-IF97; up to 180 degC and 30 bar absolute interpolated from it, to 1e-8"),
    ]
    if report.scenario is not None:
        rows.insert(2, ("scenario", report.scenario))
    if dossier.date:
        rows.append(("date", dossier.date))
    yield Table(("what", "value"), tuple(rows))
