"""Findings of two reports matched: by all parts, then by the leading one, the rest new or gone."""

from plumbnet.rules.finding import Finding, Severity
from plumbnet.study.compare.finding_match import matched


def found(name: str, *parts: str, text: str = "it is so.", line: int = 1) -> Finding:
    return Finding(name, Severity.WARNING, parts, line, "common practice", verified=True, text=text, advice="Mend it.")


def test_equal_findings_are_neither_new_nor_gone_nor_altered() -> None:
    one, other = found("a", "tank"), found("b", "tank")
    result = matched([one, other], [other, one])
    assert (result.new, result.gone, result.altered) == ((), (), ())


def test_line_that_moved_is_no_difference() -> None:
    assert matched([found("a", "tank", line=3)], [found("a", "tank", line=9)]).altered == ()


def test_other_words_are_an_alteration() -> None:
    (change,) = matched([found("a", "tank", text="by 3 psi.")], [found("a", "tank", text="by 4 psi.")]).altered
    assert (change.before.text, change.after.text) == ("by 3 psi.", "by 4 psi.")
    assert not change.is_worse


def test_all_parts_come_before_the_leading_one() -> None:
    before = [found("a", "heater", "meter"), found("a", "heater", "cv")]
    after = [found("a", "heater", "cv"), found("a", "heater", "stop")]
    (change,) = matched(before, after).altered
    assert (change.before.parts, change.after.parts) == (("heater", "meter"), ("heater", "stop"))


def test_same_name_about_another_part_is_new() -> None:
    result = matched([found("a", "tank")], [found("a", "tank2")])
    assert [one.parts for one in result.new] == [("tank2",)]
    assert [one.parts for one in result.gone] == [("tank",)]


def test_one_of_two_alike_is_gone() -> None:
    twice = [found("a", "tank", text="first."), found("a", "tank", text="second.")]
    result = matched(twice, twice[:1])
    assert [one.text for one in result.gone] == ["second."]
    assert matched(twice[:1], twice).new == (twice[1],)
