"""Rule profiles and findings as an inspector looks them up: values, clauses, and which of them nobody read."""

import inspect
from collections.abc import Iterator, Sequence

from plumbnet.layout.units import quantity_of, show
from plumbnet.report.prose import Block, Heading, Paragraph, Points, Table, document_text
from plumbnet.rules import REQUIREMENTS, Ground, MayAccept, Profile, Requirement, Ruling, ruling_of, severity_of

EDITION = (
    "Clauses marked with * are from memory: nobody who wrote this profile had their text at hand. Check them, and "
    "local amendments, in the edition in force. The authority having jurisdiction decides."
)


def profiles_text(profiles: Sequence[Profile]) -> str:
    """Every profile with its title, and what its clauses rest on: how many were read, are practice, are recalled."""
    rows = tuple((one.profile, one.title, *_counted(one).values()) for one in profiles)
    return document_text(
        [
            Table(("profile", "what it stands for", *(ground.value for ground in Ground)), rows),
            Paragraph("Name one in the field rules of a layout, or by --rules. plumbnet rules NAME prints its values."),
        ]
    )


def profile_text(profile: Profile) -> str:
    """A profile with all its values, and its findings with their clauses."""
    return document_text(list(_profile(profile)))


def findings_text(profile: Profile) -> str:
    """Every finding with its severity under a profile, and what is found."""
    rows = [(name, _severity(rule, profile), _paragraphs(rule)[0]) for name, rule in sorted(REQUIREMENTS.items())]
    return document_text(
        [
            Table(("finding", "severity", "what is found"), tuple(rows)),
            Paragraph("plumbnet rules FINDING tells one in full, with a layout that shows it and one that does not."),
        ]
    )


def finding_text(name: str, profile: Profile) -> str:
    """One finding: what, why, what to do, its clause, a layout that shows it and the nearest that does not.

    Raises KeyError for a finding that there is not.
    """
    rule = REQUIREMENTS[name]
    head: list[Block] = [
        Heading(name, 1),
        *map(Paragraph, _paragraphs(rule)),
        Table(
            ("under", "severity", "clause"),
            ((profile.title, _severity(rule, profile), _clause(ruling_of(rule, profile))),),
        ),
        Paragraph(_how_to_accept(rule)),
    ]
    return (
        f"{document_text(head)}\nA layout that shows it:\n\n{_indented(rule.bad)}\n\n"
        f"The nearest that does not:\n\n{_indented(rule.good)}\n"
    )


def _how_to_accept(rule: Requirement) -> str:
    if rule.may_accept is MayAccept.NOBODY:
        return "Nobody can accept it: it is a danger to life."
    entry = f"[{{finding: {rule.name}, part: ..., reason: ...}}]"
    if rule.may_accept is MayAccept.INSPECTOR:
        return f"No file can accept it of itself; in the list of whoever reviews it, with the file: accept: {entry}"
    return f"To accept it for a part, with a reason: accept: {entry}"


def _profile(profile: Profile) -> Iterator[Block]:
    yield Heading(profile.in_full, 1)
    if profile.note:
        yield Paragraph(profile.note)
    yield Table(("value", "", "clause"), tuple(_rows(profile)))
    yield Heading("Findings")
    graded = [
        (name, _severity(rule, profile), _clause(ruling_of(rule, profile)))
        for name, rule in sorted(REQUIREMENTS.items())
    ]
    yield Table(("finding", "severity", "clause"), tuple(graded))
    if profile.site:
        yield Heading("To be seen on site")
        seen = [(name, one.asks, _clause(one)) for name, one in profile.site.items()]
        yield Table(("what no layout tells", "what is asked", "clause"), tuple(seen))
    counts = ", ".join(f"{count} {ground}" for ground, count in _counted(profile).items())
    yield Points((f"SHA-256 {profile.sha256}", f"clauses: {counts}"))
    yield Paragraph(EDITION)


def _rows(profile: Profile) -> Iterator[tuple[str, str, str]]:
    for name, ruling in profile.rulings().items():
        yield name.replace("_", " "), _value(ruling), _clause(ruling)


def _value(ruling: Ruling) -> str:
    """What a ruling sets, in both systems of units."""
    told = []
    for field, info in type(ruling).model_fields.items():
        value, quantity = getattr(ruling, field), quantity_of(info)
        if field in Ruling.model_fields or value is None or value == info.default:
            continue
        label = "" if field.partition("_")[0] == "value" else f"{(info.alias or field).replace('_', ' ')} "
        if quantity is None:
            told.append(f"{label}{str(value).replace('-', ' ') if isinstance(value, str) else value}")
            continue
        us, metric = (show(value, quantity.dimension, units) for units in ("us", "metric"))
        told.append(f"{label}{us}" if us == metric else f"{label}{us} ({metric})")
    return ", ".join(told)


def _clause(ruling: Ruling) -> str:
    return ruling.clause if ruling.is_certain else f"* {ruling.clause}"


def _severity(rule: Requirement, profile: Profile) -> str:
    severity = severity_of(rule, profile)
    return "off" if severity is None else severity.value


def _counted(profile: Profile) -> dict[Ground, str]:
    """How many clauses of a profile rest on what."""
    grounds = [ruling.ground for ruling in profile.clauses()]
    return {ground: str(grounds.count(ground)) for ground in Ground}


def _paragraphs(rule: Requirement) -> list[str]:
    return [" ".join(paragraph.split()) for paragraph in inspect.cleandoc(rule.about).split("\n\n")]


def _indented(layout: str) -> str:
    return "\n".join(f"    {line}".rstrip() for line in layout.rstrip().splitlines())
