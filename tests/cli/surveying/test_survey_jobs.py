"""Files handed out with their content, and the entry each comes to; commands/test_survey.py runs the whole."""

import pickle
from pathlib import Path

import pytest
from conftest import layout
from running import FAULTY, Write

from plumbnet.cli.file_search.file_targets import Target
from plumbnet.cli.surveying.survey_jobs import MOST_BYTES, MOST_FILES, OtherVersion, SurveyJob, handed_out
from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_entry import WhatIfFate
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.study.whatif.bulk_changes import SetEach, Supposed

METERED = layout("street -> meter -> heater -> tap.hot").encode()
ASKED = SurveyQuery(None, None, Supposed("repair", (SetEach("meter", {"check": True}),)))
ASKING = SurveyJob(ASKED, "0.1.0")


def test_answer_needs_no_file_on_the_disk_and_travels() -> None:
    asking = pickle.loads(pickle.dumps(ASKING))  # noqa: S301  our own
    (entry,) = pickle.loads(pickle.dumps(asking((Target("nowhere.yaml", given=METERED),))))  # noqa: S301  our own
    assert (entry.path, entry.fate, entry.file["what_if"]) == ("nowhere.yaml", Fate.CHECKED, WhatIfFate.MADE)
    assert entry.heaters[0]["after_verdict"] == "sealed"


def test_scenario_of_the_layout_is_made_before_what_is_done_to_each() -> None:
    scenario = "scenarios: {repair: {change: [{insert: {part: new, kind: meter, between: [street, tee]}}]}}\n"
    text = layout("street -> tee -> heater -> tap.hot")
    (plain, with_one) = ASKING((Target("a", given=text.encode()), Target("b", given=(text + scenario).encode())))
    assert (plain.file["what_if"], plain.heaters[0]["after_verdict"]) == (WhatIfFate.NOT_TOUCHED, "open")
    assert (with_one.file["what_if"], with_one.heaters[0]["after_stopped_by"]) == (WhatIfFate.MADE, "new")


def test_process_of_another_version_answers_nothing() -> None:
    with pytest.raises(OtherVersion, match=r"^0\.1\.0$"):
        SurveyJob(ASKED, "0.2.0")((Target("a", given=METERED),))


def test_whatever_is_wrong_with_a_file_is_its_entry() -> None:
    faulty, lost, other = ASKING(
        (
            Target("a", given=FAULTY.encode()),
            Target("b", trouble="it is lost"),
            Target("c", is_named=False, given=b"x: 1"),
        )
    )
    assert (faulty.fate, faulty.errors[0]["line"]) == (Fate.NOT_UNDERSTOOD, 2)
    assert faulty.sha256 is not None
    assert (lost.fate, lost.errors[0]["text"], lost.sha256) == (Fate.NOT_UNDERSTOOD, "it is lost", None)
    assert other.fate is Fate.NO_LAYOUT


def test_what_cannot_be_computed_with_the_change_made_is_a_change_refused() -> None:
    asking = SurveyJob(SurveyQuery(None, None, Supposed(None, (SetEach("main", {"pressure": "1 psi"}),))), "0.1.0")
    (entry,) = asking((Target("a", given=layout("street -> heater -> tap.hot", tap="elevation: 100 ft").encode()),))
    assert entry.file["what_if"] is WhatIfFate.REFUSED
    assert "higher than the supply" in str(entry.errors[0]["text"])
    assert (entry.heaters[0]["verdict"], entry.heaters[0].get("after_verdict")) == ("open", None)


def test_files_are_handed_out_some_at_a_time_and_each_once(write: Write) -> None:
    names = [write(f"{number:03}.yaml", "x") for number in range(MOST_FILES + 3)]
    passed: list[None] = []
    with Book(None, ASKED) as book:
        found = [Target(name) for name in [*names, names[0]]]
        handed = list(handed_out(found, book, lambda: passed.append(None)))
        assert [len(hand) for hand in handed] == [MOST_FILES, 3]
        assert [target.file for hand in handed for target in hand] == names
        assert len(passed) == 1


def test_large_files_are_handed_out_alone(write: Write) -> None:
    names = [write(f"{number}.yaml", "x" * MOST_BYTES) for number in range(3)]
    with Book(None, ASKED) as book:
        assert [len(hand) for hand in handed_out(map(Target, names), book, lambda: None)] == [1, 1, 1]


def test_file_is_read_when_it_is_needed_and_not_before(write: Write) -> None:
    names = [write(f"{number:03}.yaml", "x") for number in range(MOST_FILES + 1)]
    with Book(None, ASKED) as book:
        handed = handed_out(map(Target, names), book, lambda: None)
        next(handed)
        Path(names[-1]).unlink()
        assert next(handed)[0].trouble == "no such file or directory"
