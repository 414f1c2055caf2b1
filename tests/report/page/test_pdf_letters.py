"""Text of a PDF: no markup, no sign that the font lacks."""

from plumbnet.report.page.pdf_letters import LONGEST, cut, in_the_font, lettered


def test_markup_in_a_text_is_text() -> None:
    assert lettered('<b a="c">&amp;') == '&lt;b a="c"&gt;&amp;amp;'


def test_signs_that_do_not_print_or_that_the_font_lacks_are_escapes() -> None:
    assert in_the_font("\x1b \u202e 漢 °F → é Ж") == "\\x1b \\u202e \\u6f22 °F → é Ж"


def test_long_text_is_cut_to_what_a_cell_holds() -> None:
    assert cut("a" * LONGEST) == "a" * LONGEST
    assert cut("a" * (LONGEST + 1)) == "a" * (LONGEST - 3) + "..."
