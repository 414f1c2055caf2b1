import re

from plumbnet.report.worksheets.worksheet_content import Worksheet, key, worksheet
from plumbnet.report.worksheets.worksheet_text import options_text, task_text, worksheets_markdown
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.walk_choice import answer_walks

DEALT = exercises(4, 2, 3)
SHEETS, KEYS = [worksheet(one) for one in DEALT], [key(one, answer_walks(one)) for one in DEALT]


def sheet_of(question: str) -> Worksheet:
    return worksheet(exercises(4, 2, about=question)[0])


def test_every_worksheet_and_every_key_has_a_page_of_its_own() -> None:
    pages = worksheets_markdown(SHEETS, KEYS).split("\n---\n\n")
    heads = [page.splitlines()[0].partition(":")[0] for page in pages]
    assert heads == [*(f"# Worksheet {n}" for n in (1, 2, 3)), *(f"# Key to worksheet {n}" for n in (1, 2, 3))]


def test_without_keys_there_is_no_answer() -> None:
    text = worksheets_markdown(SHEETS)
    assert "Key to" not in text
    assert "opens lowest" not in text


def test_worksheet_has_boxes_to_tick_and_rules_to_write_on() -> None:
    text = worksheets_markdown([sheet_of("opens-first")])
    assert re.search(r"- \\\[ \\\] [abc]\) street\n", text)
    assert "It opens at \\_\\_" in text


def test_supposition_stands_before_the_question() -> None:
    one = next(one for one in exercises(4, 1, 8, about="verdict") if one.supposed)
    text = task_text(worksheet(one))
    assert text.index(f"Suppose: {one.supposed.split()[0]}") < text.index("Question: ")


def test_picture_stands_above_the_parts() -> None:
    text = worksheets_markdown(SHEETS[:1], KEYS[:1], {1: "class-1.svg"}, {1: "class-key-1.svg"})
    assert text.index("![The piping of worksheet 1](<class-1.svg>)") < text.index("| part | is a | with |")
    key_head = text.index("# Key to worksheet 1")
    assert key_head < text.index("![The piping of worksheet 1 with the answer](<class-key-1.svg>)")


def test_task_in_a_terminal_has_no_blanks() -> None:
    text = task_text(SHEETS[0])
    assert text.startswith(f"1. {SHEETS[0].place}\n===")
    assert "____" not in text


def test_options_are_lettered_and_explained() -> None:
    outlet, pressure = sheet_of("opens-first").lines
    assert options_text(outlet).startswith(f"  a) {outlet.options[0].word}\n  b) ")
    assert options_text(outlet).endswith("\nThe first to open is: ")
    assert options_text(pressure) == "It opens at (psi): "
    assert "  a) open: it can go back to the street" in options_text(sheet_of("verdict").lines[0])
