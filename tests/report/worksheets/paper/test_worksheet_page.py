import base64
import re
from dataclasses import replace
from html.parser import HTMLParser

from plumbnet.report.worksheets.paper.worksheet_page import worksheets_html
from plumbnet.report.worksheets.worksheet_content import key, worksheet
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.walk_choice import answer_walks

DEALT = exercises(4, 4, 3)
SHEETS, KEYS = [worksheet(one) for one in DEALT], [key(one, answer_walks(one)) for one in DEALT]
VOID = {"meta", "img", "br", "link", "input", "hr"}
EVIL = '<script>alert(1)</script>" onload="x\x1b[2J\u202e'


class Balanced(HTMLParser):
    """Tags as they open and close."""

    def __init__(self) -> None:
        super().__init__()
        self.stack: list[str] = []
        self.tags: list[str] = []
        self.text = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002  as it is called
        self.tags.append(tag)
        if tag not in VOID:
            self.stack.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.stack.pop() == tag

    def handle_data(self, data: str) -> None:
        self.text += data


def parsed(page: str) -> Balanced:
    found = Balanced()
    found.feed(page)
    assert found.stack == []
    return found


def test_page_has_a_section_for_each_worksheet_and_each_key() -> None:
    page = parsed(worksheets_html(SHEETS, KEYS))
    assert page.tags.count("section") == 6
    assert page.tags.count("h1") == 6
    assert "Key to worksheet 2" in page.text


def test_page_without_keys_has_no_answer() -> None:
    assert "Key to" not in worksheets_html(SHEETS)


def test_page_needs_nothing_from_elsewhere_and_no_script() -> None:
    page = worksheets_html(SHEETS, KEYS)
    assert not re.search(r"https?://|<script|<link|url\(", page)
    assert "default-src 'none'" in page


def test_names_and_titles_are_text_and_nothing_else() -> None:
    sheet = replace(
        SHEETS[0], place=EVIL, parts=((EVIL, EVIL, EVIL),), runs=(EVIL,), supposed=EVIL, prompt=EVIL, assumed=(EVIL,)
    )
    answers = replace(KEYS[0], place=EVIL, because=(EVIL,), walks=((EVIL,),), layout=(EVIL,), answers=((EVIL, EVIL),))
    page = worksheets_html([sheet], [answers])
    found = parsed(page)
    assert "script" not in found.tags
    assert "<script>alert(1)</script>" in found.text
    assert not any(control in page for control in ("\x1b", "\u202e"))


def test_picture_is_embedded_where_nothing_in_it_can_reach_the_page() -> None:
    svg = "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"
    page = worksheets_html(SHEETS[:1], KEYS[:1], {1: svg}, {1: svg})
    sources = re.findall(r'src="data:image/svg\+xml;base64,([^"]*)"', page)
    assert [base64.b64decode(source).decode() for source in sources] == [svg, svg]
    assert "<script" not in page


def test_same_exercises_give_the_same_bytes() -> None:
    assert worksheets_html(SHEETS, KEYS) == worksheets_html(SHEETS, KEYS)
