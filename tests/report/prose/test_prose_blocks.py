"""Documents as text and as Markdown."""

from plumbnet.physics.sizing.duty import step
from plumbnet.report.prose.printed_precision import written_step
from plumbnet.report.prose.prose_blocks import (
    Heading,
    Lines,
    Paragraph,
    Points,
    Steps,
    Table,
    document_text,
    escaped,
    to_markdown,
)

STEP = written_step(step("V_e", "expansion", "V * e", 0.004, "by | definition", V=0.2, e=0.02), "metric")


def test_headings_are_underlined_in_text_and_marked_in_markdown() -> None:
    assert document_text([Heading("One", 1), Heading("Two")]) == "One\n===\n\nTwo\n---\n"
    assert to_markdown([Heading("One", 1), Heading("Three", 3)]) == "# One\n\n### Three\n"


def test_paragraph_with_a_label() -> None:
    assert document_text([Paragraph("said", "Who")]) == "Who: said\n"
    assert to_markdown([Paragraph("said *so*", "Who")]) == "**Who:** said \\*so\\*\n"


def test_points_are_a_list() -> None:
    assert document_text([Points(("one", "two"))]) == to_markdown([Points(("one", "two"))]) == "- one\n- two\n"


def test_table_in_columns_and_in_pipes() -> None:
    table = Table(("what", "value"), (("a", "1"), ("longer", "b|c")))
    assert document_text([table]) == "what    value\na       1\nlonger  b|c\n"
    assert to_markdown([table]) == "| what | value |\n| --- | --- |\n| a | 1 |\n| longer | b\\|c |\n"


def test_wide_table_is_wrapped_within_the_page() -> None:
    text = document_text([Table(("a", "b", "c"), (("word " * 30, "x", "other " * 30),))])
    assert max(map(len, text.splitlines())) <= 100
    assert text.count("word") == text.count("other") == 30


def test_step_is_printed_with_its_numbers() -> None:
    assert document_text([Steps((STEP,), 7)]) == (
        " 7. expansion [by | definition]\n    V_e = V * e\n        V = 200 L, e = 0.02\n    V_e = 4.00000 L\n"
    )
    assert to_markdown([Steps((STEP,), 7)]).splitlines()[2] == (
        "| 7 | expansion | `V_e = V * e` | `V` = 200 L<br>`e` = 0.02 | **4.00000 L** | by \\| definition |"
    )


def test_lines_stand_as_they_are_behind_a_fence_that_they_cannot_end() -> None:
    lines = Lines(("  a: *b*", "```", "c\x1b[2J"))
    assert document_text([lines]) == "  a: *b*\n```\nc\\x1b[2J\n"
    assert to_markdown([lines]) == "````\n  a: *b*\n```\nc\\x1b[2J\n````\n"
    assert to_markdown([Lines(())]) == "```\n```\n"


def test_markdown_leaves_nothing_of_a_text_that_it_would_obey() -> None:
    assert escaped("a_b*c`d") == "a\\_b\\*c\\`d"
    assert escaped("<img src=x> & [t](u)") == "\\<img src=x\\> \\& \\[t\\](u)"
    assert escaped("line\nbreak\x1b") == "line\\\\nbreak\\\\x1b"
    assert escaped("www.a.b http://c") == "www\\.a.b http\\://c"
