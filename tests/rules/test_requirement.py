import pytest
from registering import emptied, facts, on

from plumbnet.rules.answering import findings_of
from plumbnet.rules.finding import Severity
from plumbnet.rules.known import RESTS_ON
from plumbnet.rules.requirement import REQUIREMENTS, Requirement, requirement, severity_of
from plumbnet.rules.rule_profile import profile, read_profile
from plumbnet.rules.ruling import COMMON_PRACTICE


@pytest.fixture
def alone(monkeypatch: pytest.MonkeyPatch) -> dict[str, Requirement]:
    """An empty register in place of the real one."""
    return emptied(monkeypatch)


def test_finding_is_registered_by_its_name_and_left_as_it_is(alone: dict[str, Requirement]) -> None:
    test = on("tee")
    assert requirement("tank-cut-off", Severity.ERROR, bad="bad", good="good")(test) is test
    rule = alone["tank-cut-off"]
    assert (rule.name, rule.severity, rule.test, rule.bad, rule.good) == (
        "tank-cut-off",
        Severity.ERROR,
        test,
        "bad",
        "good",
    )
    assert rule.about.startswith("A thing is found.")


def test_finding_rests_on_the_value_that_it_names_or_on_none(alone: dict[str, Requirement]) -> None:
    requirement("tank-cut-off", Severity.ERROR, bad="", good="")(on("tee"))
    requirement("bypass-does-not-count", Severity.ERROR, bad="", good="", rests_on="bypass")(on("tee"))
    assert [rule.rests_on for rule in alone.values()] == ["", "bypass"]
    assert [one.clause for one in findings_of(facts(), profile("general"))] == [
        profile("general").bypass.clause,
        profile("general").findings["tank-cut-off"].clause,
    ]


def test_clause_of_common_practice_stands_with_the_finding_unless_a_profile_writes_its_own(
    alone: dict[str, Requirement], monkeypatch: pytest.MonkeyPatch
) -> None:
    requirement("tag-missing", Severity.NOTE, bad="", good="", practice="common practice: tags")(on("tee"))
    monkeypatch.setitem(RESTS_ON, "tag-missing", None)
    written = "findings: {tag-missing: {clause: Tag Code 3, verified: true}}\n"
    ours = read_profile(f"profile: ours\ntitle: Ours\nextends: general\n{written}".encode(), file="ours.yaml")
    assert [rule.practice for rule in alone.values()] == ["common practice: tags"]
    (by_practice,), (by_code,) = (findings_of(facts(), rules) for rules in (profile("general"), ours))
    assert (by_practice.clause, by_practice.verified) == ("common practice: tags", False)
    assert (by_code.clause, by_code.verified) == ("Tag Code 3", True)


def test_what_a_finding_says_of_practice_names_no_code() -> None:
    assert all(rule.practice.startswith(COMMON_PRACTICE) for rule in REQUIREMENTS.values() if rule.practice)


@pytest.mark.parametrize(("graded", "expected"), [("note", Severity.NOTE), ("off", None), (None, Severity.ERROR)])
def test_profile_grades_a_finding_or_looks_away(graded: str | None, expected: Severity | None) -> None:
    own = "" if graded is None else f"findings: {{tank-cut-off: {{severity: {graded}, clause: x, verified: true}}}}\n"
    ours = read_profile(f"profile: ours\ntitle: Ours\nextends: general\n{own}".encode(), file="ours.yaml")
    assert severity_of(REQUIREMENTS["tank-cut-off"], ours) is expected


def test_rule_without_a_docstring_says_nothing() -> None:
    assert Requirement("x", Severity.NOTE, lambda _facts, _profile: iter(()), "", "").about == ""


def test_names_are_what_was_found_in_words_joined_by_hyphens() -> None:
    for name, rule in REQUIREMENTS.items():
        assert name == rule.name
        assert name.replace("-", "").isalpha()
        assert name == name.lower()
        assert not name.startswith(("no-", "check-that", "fit-"))
