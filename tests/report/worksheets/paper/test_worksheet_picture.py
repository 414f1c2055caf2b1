import re

from plumbnet.report.worksheets.paper.worksheet_picture import answer_svg, piping_svg
from plumbnet.study.exercise.generator import exercises

(TRAPPED,) = (one for one in exercises(1, 1, 2, about="verdict") if one.asked.outcome == "trapped")
WORDS = re.compile(r"<text[^>]*>([^<]*)</text>")


def words(svg: str) -> set[str]:
    return set(WORDS.findall(svg))


def test_picture_of_the_worksheet_names_every_part_and_gives_nothing_away() -> None:
    svg = piping_svg(TRAPPED.system, number=1)
    shown = " ".join(sorted(words(svg)))
    assert all(name in shown for name in TRAPPED.system.written if "-" not in name)
    assert not re.search(r"trapped|stops|psi|way out", shown, re.IGNORECASE)


def test_picture_of_the_key_says_what_is_trapped() -> None:
    shown = " ".join(sorted(words(answer_svg(TRAPPED.report))))
    assert "TRAPPED" in shown
    assert "psi" in shown


def test_picture_stays_the_same_whatever_is_supposed() -> None:
    one = next(one for one in exercises(4, 1, 8, about="verdict") if one.supposed)
    assert piping_svg(one.system, number=3) == piping_svg(one.system, number=3)
    assert "what-if" not in piping_svg(one.system, number=3)
