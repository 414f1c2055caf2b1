"""A review read again: what is taken from it, and the whole text of everything that may be wrong with it."""

import json

import pytest
from curing import house
from reviewing import requirement, review, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.compare.review_file import LastReview, last_review

LAYOUT = b"plumbnet: 1\nparts: {street: {kind: main, pressure: 62 psi}, sink: fixture}\nruns: [street -> sink.cold]\n"
HINT = "plumbnet review FILE --format json writes one"


def checked(system: System | None = None) -> Report:
    return plumbnet.check(system or plumbnet.read_bytes(LAYOUT, file="house.yaml"))


BEFORE = checked()


def read(data: bytes | object) -> LastReview:
    return last_review(data if isinstance(data, bytes) else written(data), BEFORE, file="old.json")


def refused(data: bytes | object) -> str:
    with pytest.raises(LayoutError) as error:
        read(data)
    return str(error.value)


def test_review_of_the_file_is_taken_with_its_comments_by_number() -> None:
    found = read(
        review(
            BEFORE,
            requirement("b", "tank", number=2, answer="cannot-be-told"),
            requirement("c", "tank", answer="met", value=1.0, bound=2.0, unit="Pa"),
            requirement("a", "heater", "meter", number=1),
        )
    )
    assert (found.file, found.reviewer, found.date) == ("house.yaml", "A. Plan-Checker", "12 May 2031")
    assert [(one.number, one.name, one.parts) for one in found.comments] == [
        (1, "a", ["heater", "meter"]),
        (2, "b", ["tank"]),
    ]
    assert found.highest == 2
    assert found.requirements[1].value == 1.0


def test_review_without_a_comment_begins_to_count_at_one() -> None:
    assert read(review(BEFORE, requirement("a", "tank", answer="met"))).highest == 0


def test_more_keys_than_are_known_are_passed_over() -> None:
    document = review(BEFORE, requirement("a", "tank", number=1, confidence="high"), town="Lantern Falls")
    assert read({**document, "more": []}).highest == 1


def test_of_several_reviews_that_of_the_file_is_taken() -> None:
    other = review(checked(house()), requirement("a", "tank", number=9))
    own = review(BEFORE, requirement("b", "tank", number=1))
    assert read({**own, "reviews": other["reviews"] + own["reviews"]}).highest == 1


def test_what_is_no_json_is_told_with_its_place() -> None:
    assert refused(b'{"schema": 1,\n "reviews": [}') == (
        f'old.json:2:14: this is no JSON: expecting value; {HINT}\n  2 |  "reviews": [}}\n    |              ^'
    )
    assert refused(b"") == f"old.json:1:1: this is no JSON: expecting value; {HINT}"
    assert refused(b"\xff") == "old.json:1:1: the byte 0xFF is not UTF-8; save the file in the encoding UTF-8"


@pytest.mark.parametrize("data", [b"[" * 100_000, b'{"schema": ' + b"9" * 10_000 + b"}"])
def test_what_no_reader_bears_is_refused(data: bytes) -> None:
    assert refused(data) == f"old.json: this is nested too deeply, or holds a number too long, to be a review; {HINT}"


def test_other_version_of_the_keys_is_refused() -> None:
    assert refused(b'{"schema": 2, "reviews": []}') == (
        'old.json:1:12: schema: write 1, not 2\n  1 | {"schema": 2, "reviews": []}\n    |            ^'
    )


def test_report_of_a_check_is_no_review() -> None:
    assert refused(b'{"schema": 1, "reports": []}') == (
        f"old.json:1:15: this is what plumbnet check writes, and no review; {HINT}\n"
        '  1 | {"schema": 1, "reports": []}\n'
        "    |               ^~~~~~~"
    )


@pytest.mark.parametrize(
    ("field", "value", "sentence"),
    [
        ("name", 3, "name: a name or text is wanted here, not 3; put it in quotes"),
        ("number", 0, "number: 0 cannot be used here"),
        ("answer", "maybe", 'answer: write "met", "broken", "not-applicable" or "cannot-be-told", not "maybe"'),
        ("parts", "tank", 'parts: a list is wanted here, not "tank"'),
        ("value", "much", 'value: "much" cannot be used here'),
    ],
)
def test_field_that_cannot_be_used_is_told_with_its_line(field: str, value: object, sentence: str) -> None:
    document = review(BEFORE, {**requirement("a", "tank", number=1), field: value})
    lines = written(document).decode().splitlines()
    begins = f'"{field}": {json.dumps(value)}'
    line = next(number for number, text in enumerate(lines, 1) if text.strip().startswith(begins))
    assert refused(document).startswith(f"old.json:{line}:")
    assert sentence in refused(document)


def test_field_that_is_missing_is_told() -> None:
    document = review(BEFORE, {"name": "a", "number": 1})
    assert refused(document).splitlines()[0] == 'old.json:14:5: a requirement needs "answer"'


def test_all_that_is_wrong_comes_at_once() -> None:
    document = review(BEFORE, requirement("a", answer="x"), requirement("b", answer="y"))
    assert refused(document).count('write "met", "broken", ') == 2


def test_review_of_another_file_is_refused() -> None:
    other = checked(house())
    assert refused(review(other)).splitlines()[0] == (
        f'old.json:4:2: there is no review of house.yaml here, only of "drawn.yaml"; {HINT}'
    )
    four = review(other)
    four["reviews"] *= 4
    assert 'only of "drawn.yaml", "drawn.yaml", "drawn.yaml" and others;' in refused(four)
    assert refused(b'{"schema": 1, "reviews": []}').splitlines()[0] == (
        f"old.json:1:15: there is no review in it; {HINT}"
    )


def test_review_of_another_version_of_the_file_is_refused() -> None:
    document = review(BEFORE, sha256="0" * 64)
    assert refused(document).splitlines()[0] == (
        "old.json:7:14: the review is of another version of house.yaml: its SHA-256 is not that of the layout before; "
        "compare with the file that was reviewed"
    )


def test_review_by_other_rules_is_refused() -> None:
    document = review(BEFORE, rules="ipc-2021")
    assert refused(document).splitlines()[0] == (
        'old.json:9:13: the review of house.yaml was made by the rules "ipc-2021", and the layout before is judged by '
        '"general"; compare by the rules of the review, or review it anew'
    )


def test_number_that_stands_twice_is_refused() -> None:
    document = review(BEFORE, requirement("a", "tank", number=1), requirement("b", "tank", number=1))
    assert (
        refused(document)
        .splitlines()[0]
        .endswith("the number 1 stands twice in the review of house.yaml; every comment has its own")
    )


def test_where_json_is_no_yaml_the_file_is_named_without_a_place() -> None:
    r"""A letter beyond the first 65,536 is written as \ud83d\ude00, which YAML does not know."""
    document = review(BEFORE, rules="ipc-2021", title="\U0001f600")
    assert refused(document).startswith("old.json: the review of house.yaml was made by the rules")
