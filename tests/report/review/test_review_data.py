"""Reviews as JSON and as a table."""

import csv
import io
import json

from conftest import system

import plumbnet
from plumbnet.layout.yaml.fault import Fault
from plumbnet.report.output.writer import Unread
from plumbnet.report.review.review_data import COLUMNS, SI, review_document, review_table
from plumbnet.report.review.reviewed_files import ReviewedFiles
from plumbnet.rules.answering import answers_of
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.study.review.review_sheet import Review, review_of

BAD = Unread("b.yaml", (Fault(3, 9, "no such part"),), "b.yaml:3:9: no such part")


def review() -> Review:
    runs = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"
    relief = "pressure: 150 psi, capacity: 50000 Btu/h"
    return review_of(plumbnet.check(system(runs, relief=relief)), reviewer="R. Hale")


def test_document_holds_every_answer_with_its_value_in_si() -> None:
    document = json.loads(review_document(ReviewedFiles((review(),), (BAD,))))
    (one,) = document["reviews"]
    assert (one["file"], one["rules"], one["reviewer"], one["date"]) == ("drawn.yaml", "general", "R. Hale", None)
    assert {each["name"] for each in one["requirements"]} == set(REQUIREMENTS)
    (capacity,) = (each for each in one["requirements"] if each["name"] == "relief-below-input")
    assert (capacity["answer"], capacity["sense"], capacity["unit"]) == ("met", "at least", "W")
    assert (round(capacity["value"]), round(capacity["bound"])) == (14654, 11723)
    assert capacity["clause_state"] == "read"
    (trapped,) = (each for each in one["requirements"] if each["name"] == "trapped-expansion")
    assert (trapped["number"], trapped["answer"], trapped["severity"]) == (1, "broken", "error")
    assert trapped["parts"] == ["heater", "cv"]
    assert trapped["advice"].startswith("Fit an expansion tank")
    assert sum(one["counts"].values()) == len(one["requirements"])
    assert document["errors"] == [{"file": "b.yaml", "line": 3, "column": 9, "text": "no such part"}]


def test_table_has_a_row_for_every_answer_and_every_mistake() -> None:
    rows = list(csv.DictReader(io.StringIO(review_table(ReviewedFiles((review(),), (BAD,))))))
    assert tuple(rows[0]) == COLUMNS
    assert len(rows) == len(review().answers) + 1
    assert rows[-1] == dict.fromkeys(COLUMNS, "") | {"file": "b.yaml", "line": "3", "found": "no such part"}
    (broken,) = (row for row in rows if row["answer"] == "broken")
    assert (broken["number"], broken["requirement"], broken["parts"]) == ("1", "trapped-expansion", "heater; cv")


def test_every_dimension_that_is_measured_has_its_unit() -> None:
    for rule in REQUIREMENTS.values():
        for text in (rule.bad, rule.good):
            report = plumbnet.check(plumbnet.read_bytes(text.encode(), file="a.yaml"))
            measured = (one.measured for one in answers_of(report.facts, report.profile))
            assert all(one.dimension.name in SI for one in measured if one is not None)
