"""Profiles and findings as they are looked up."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.report.reference.rulebook import finding_text, findings_text, profile_text, profiles_text
from plumbnet.rules.requirement import REQUIREMENTS, ruling_of
from plumbnet.rules.rule_profile import profile, profile_names, read_profile
from plumbnet.rules.ruling import Ground


def test_every_profile_is_listed_with_what_its_clauses_rest_on() -> None:
    text = profiles_text([profile(name) for name in profile_names()])
    for name in profile_names():
        assert f"\n{name} " in text
    head, row = profiles_text([profile("general")]).splitlines()[:2]
    assert head.split("  ")[-3:] == ["read", "common practice", "from memory"]
    general = profile("general")
    every = [*general.rulings().values(), *general.findings.values(), *general.site.values()]
    practice = sum(ruling.clause.startswith("common practice") for ruling in every)
    read = sum(ruling.verified and not ruling.clause.startswith("common practice") for ruling in every)
    assert [int(count) for count in row.split()[-3:]] == [read, practice, len(every) - read - practice]


def test_profile_counts_practice_apart_from_what_was_read() -> None:
    own = (
        "profile: ours\ntitle: Ours\nextends: general\n"
        'distribution_limit: {value: 70 psi, clause: "common practice: so it is done here", verified: true}\n'
        "relief_share: {value: 80 %, clause: a bylaw, verified: true}\n"
        "relief_set: {value: 125 psi, clause: another bylaw, verified: false}\n"
    )
    ours, base = (read_profile(text.encode(), file="ours.yaml") for text in (own, own.partition("distrib")[0]))
    grounds = [[one.ground for one in chosen.clauses()] for chosen in (ours, base)]
    counts = [f"{grounds[0].count(ground)} {ground}" for ground in Ground]
    assert f"clauses: {', '.join(counts)}" in " ".join(profile_text(ours).split())
    assert ours.distribution_limit.ground is Ground.PRACTICE
    assert [ours.relief_share.ground, ours.relief_set and ours.relief_set.ground] == [Ground.READ, Ground.MEMORY]


def test_what_no_layout_tells_is_listed_with_its_clause() -> None:
    site = 'site:\n  pan: {asks: a pan under the heater, clause: "IRC P2801.6", verified: false}\n'
    own = f"profile: ours\ntitle: Ours\nextends: general\n{site}"
    text = " ".join(profile_text(read_profile(own.encode(), file="ours.yaml")).split())
    assert "To be seen on site" in text
    assert "pan a pan under the heater * IRC P2801.6" in text


@pytest.mark.parametrize("name", profile_names())
def test_profile_tells_every_value_and_clause_and_marks_those_from_memory(name: str) -> None:
    chosen = profile(name)
    text = " ".join(profile_text(chosen).split())
    for value in chosen.rulings():
        assert value.replace("_", " ") in text
    for found in REQUIREMENTS:
        assert found in text
    assert chosen.sha256 in text
    marks = text.count("* ") - 1  # one stands in the note below
    assert marks == sum(not ruling.is_certain for ruling in chosen.rulings().values()) + sum(
        not ruling_of(rule, chosen).is_certain for rule in REQUIREMENTS.values()
    ) + sum(not ruling.is_certain for ruling in chosen.site.values())


def test_values_are_told_in_both_systems_of_units() -> None:
    text = " ".join(profile_text(profile("uk-2010")).split())
    assert "warmest 77 degF (25 degC)" in text
    assert "sizing uk 4 percent" in text
    assert "tank behind reducer asked, above 80 psi (552 kPa)" in " ".join(profile_text(profile("upc-2024")).split())
    assert "relief share 80 %" in " ".join(profile_text(profile("en-806")).split())


def test_findings_are_graded_as_the_profile_has_it() -> None:
    assert "expansion-relief-does-not-count  warning" in findings_text(profile("upc-2018"))
    assert "expansion-relief-does-not-count  error" in findings_text(profile("general"))
    own = (
        "profile: ours\ntitle: Ours\nextends: general\n"
        "findings:\n  tank-charge-differs: {severity: off, clause: ours, verified: true}\n"
    )
    assert "tank-charge-differs              off" in findings_text(read_profile(own.encode(), file="ours.yaml"))


@pytest.mark.parametrize("name", REQUIREMENTS)
def test_finding_is_told_with_layouts_that_can_be_copied(name: str) -> None:
    text = finding_text(name, profile("general"))
    assert text.startswith(f"{name}\n====")
    shown, _, spared = text.partition("A layout that shows it:")[2].partition("The nearest that does not:")
    for layout in (shown, spared):
        copied = "\n".join(line.removeprefix("    ") for line in layout.strip("\n").splitlines())
        assert read_system(copied.encode(), file="copied.yaml").parts


def test_finding_that_there_is_not_is_refused() -> None:
    with pytest.raises(KeyError):
        finding_text("tank-cutoff", profile("general"))


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("heat-soak", "To accept it for a part, with a reason: accept: "),
        (
            "relief-missing",
            "No file can accept it of itself; in the list of whoever reviews it, with the file: accept: ",
        ),
        ("sealed-heater", "Nobody can accept it: it is a danger to life."),
    ],
)
def test_finding_says_who_may_accept_it(name: str, words: str) -> None:
    assert words in " ".join(finding_text(name, profile("general")).split())
