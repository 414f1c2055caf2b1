"""Places as SARIF says them."""

from plumbnet.report.formats.sarif_places import place_of


def test_place_has_columns_where_they_are_known_and_a_line_where_that_is() -> None:
    regions = [place_of("f", *where)["physicalLocation"] for where in ((3, 5, 4), (3,), (0,))]
    where = {"artifactLocation": {"uri": "f", "uriBaseId": "SRCROOT"}}
    assert regions == [
        {**where, "region": {"startLine": 3, "startColumn": 5, "endColumn": 9}},
        {**where, "region": {"startLine": 3}},
        where,
    ]
