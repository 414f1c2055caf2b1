import re

import pytest
from matplotlib.text import Text
from posing import RELIEF, posed

from plumbnet.drawing.fitted_picture import PicturePlace
from plumbnet.report.worksheets.paper.worksheet_picture import answer_figure, answer_svg, piping_figure, piping_svg
from plumbnet.report.worksheets.worksheet_content import worksheet
from plumbnet.study.exercise.generator import exercises

(TRAPPED,) = (one for one in exercises(1, 1, 2, about="verdict") if one.asked.outcome == "trapped")
WORDS = re.compile(r"<text[^>]*>([^<]*)</text>")


def words(svg: str) -> list[str]:
    return WORDS.findall(svg)


def test_picture_of_the_worksheet_names_every_part_with_its_sizes_and_gives_nothing_away() -> None:
    shown = " ".join(words(piping_svg(TRAPPED.system)))
    assert all(name in shown for name in TRAPPED.system.written if "-" not in name)
    fields = TRAPPED.system.written
    for told in (fields["street"]["pressure"], fields["heater"]["volume"], fields["heater"]["setpoint"]):
        assert str(told) in shown
    assert re.search("relief 1(25|50) psi", shown)
    assert not re.search(r"trapped|stops|opens|way out", shown, re.IGNORECASE)


def test_picture_of_the_key_says_what_is_trapped() -> None:
    shown = " ".join(words(answer_svg(TRAPPED.report)))
    assert "TRAPPED" in shown
    assert "psi" in shown
    figure = answer_figure(TRAPPED.report, [PicturePlace(540.0, 400.0), PicturePlace(740.0, 480.0)])
    assert figure is not None
    assert any("TRAPPED" in text.get_text() for text in figure.findobj(Text) if isinstance(text, Text))


def test_picture_is_of_the_piping_as_drawn_whatever_is_supposed() -> None:
    one = next(one for one in exercises(4, 1, 8, about="verdict") if one.supposed)
    assert "what-if" not in piping_svg(one.system)


def test_tee_that_is_asked_about_has_its_name() -> None:
    one = posed("tank", "street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold", heater=RELIEF)
    named = worksheet(one).asked_about
    tees = [name for name in named if one.system.parts[name].is_fitting]
    assert tees
    shown = "".join(words(piping_svg(one.system, named)))
    assert all(tee in shown for tee in tees)


@pytest.mark.parametrize(
    ("width", "told"),
    [(400.0, {"up-stop", "140 degF"}), (220.0, {"up-", "stop", "140 degF"}), (200.0, {"up-", "stop", "140", "degF"})],
)
def test_words_are_set_below_each_other_where_they_could_not_be_read_otherwise(width: float, told: set[str]) -> None:
    stops = ("up-stop", "in-check", "at-gate", "by-house")
    house = posed(
        "verdict",
        f"street -> {' -> '.join(stops)} -> heater -> tap.hot",
        0,
        heater=RELIEF,
        **dict.fromkeys(stops, "kind: valve"),
    )
    figure = piping_figure(house.system, (), [PicturePlace(width, 400.0)])
    assert figure is not None
    assert told <= {text.get_text() for text in figure.axes[0].findobj(Text) if isinstance(text, Text)}


def test_layout_too_wide_for_any_page_is_still_drawn() -> None:
    assert piping_figure(TRAPPED.system, (), [PicturePlace(100.0, 400.0)]) is None
