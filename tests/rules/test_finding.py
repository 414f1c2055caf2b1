"""A finding and how bad it is."""

from plumbnet.rules.finding import Finding, Severity


def test_severities_are_ordered_as_bad_as_they_are() -> None:
    assert [severity.value for severity in Severity] == ["error", "warning", "note"]


def test_finding_is_certain_where_its_clause_was_read_or_is_practice() -> None:
    for clause, verified, is_certain in (
        ("Code 1", True, True),
        ("Code 1", False, False),
        ("common practice", False, True),
    ):
        one = Finding("tank-cut-off", Severity.ERROR, ("tank",), 3, clause, verified, "It is so.", "Do.")
        assert one.is_certain is is_certain
