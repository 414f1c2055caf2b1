"""What is set of a worksheet and of a key, before it is on paper."""

from dataclasses import replace

from reportlab.platypus import Flowable, Table
from reportlab.platypus import Paragraph as Text

from plumbnet.report.page.pdf_letters import fonts
from plumbnet.report.worksheets.paper.paper_blocks import key_findings, key_head, key_traces, sheet_head, sheet_task
from plumbnet.report.worksheets.worksheet_content import key, worksheet
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.walk_choice import answer_walks

(ONE,) = exercises(3, 2, about="tank")
SHEET, KEY = worksheet(ONE), key(ONE, answer_walks(ONE))
WIDTH = 540.0


def told(pieces: list[Flowable]) -> str:
    return " ".join(_words(piece) for piece in pieces)


def _words(piece: object) -> str:
    if isinstance(piece, Text):
        return str(piece.getPlainText())
    if isinstance(piece, Table):
        return " ".join(_words(cell) for row in vars(piece)["_cellvalues"] for cell in row)
    if isinstance(piece, list | tuple):
        return " ".join(map(_words, piece))
    return ""


def test_task_has_the_question_its_options_and_what_no_picture_shows() -> None:
    fonts()
    text = told(sheet_task(SHEET, WIDTH))
    for words in (
        f"Question: {SHEET.prompt}",
        f"a) {SHEET.lines[0].options[0].word}",
        "it is charged to ____",
        "Pipes: ",
        "Where nothing is said: ",
    ):
        assert words in text


def test_what_a_file_says_is_no_markup() -> None:
    fonts()
    evil = replace(SHEET, place="<b>x", prompt="<i>y", supposed="<font>z")
    text = told([*sheet_head(evil), *sheet_task(evil, WIDTH)])
    assert all(words in text for words in ("<b>x", "<i>y", "<font>z"))


def test_key_has_answer_reason_tries_and_findings() -> None:
    fonts()
    assert KEY.answers[0][1] in told(key_head(KEY))
    assert KEY.because[0] in told(key_head(KEY))
    assert KEY.in_short[0].tries[0] in told(key_traces(KEY.in_short))
    assert key_findings(replace(KEY, findings=())) == []
    assert "A check reports: error: x" in told(key_findings(replace(KEY, findings=("error: x",))))
