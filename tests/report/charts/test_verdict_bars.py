"""The chart of a survey: a bar for each verdict, two where something is supposed."""

from collections.abc import Mapping
from dataclasses import replace

import pytest
from matplotlib.patches import Rectangle
from overlap import off_the_sheet, overlapping, written
from summed import NOTHING

from plumbnet.report.charts.verdict_bars import verdicts_chart, verdicts_file
from plumbnet.report.output.writer import Fate
from plumbnet.report.survey.survey_sums import VerdictTurn
from plumbnet.rules.facts.verdict_words import Verdict

TURNS: Mapping[VerdictTurn, int] = {
    (Verdict.OPEN, Verdict.OPEN): 5012,
    (Verdict.OPEN, Verdict.TRAPPED): 4988,
    (Verdict.SEALED, Verdict.SEALED): 3,
}
SUMS = replace(NOTHING, files={Fate.CHECKED: 10_000}, turns=TURNS)
EVERYWHERE: Mapping[VerdictTurn, int] = {(verdict, verdict): 99_999 for verdict in Verdict}


@pytest.mark.parametrize("turns", [TURNS, EVERYWHERE, {}])
@pytest.mark.parametrize("is_supposed", [True, False])
def test_no_words_lie_over_others_or_off_the_sheet(turns: Mapping[VerdictTurn, int], *, is_supposed: bool) -> None:
    axes = verdicts_chart(replace(SUMS, turns=turns, is_supposed=is_supposed))
    assert overlapping(axes) == []
    assert off_the_sheet(axes) == []


def test_bars_are_as_long_as_there_are_heaters_and_say_so() -> None:
    axes = verdicts_chart(SUMS)
    bars = [bar.get_width() for bar in axes.patches if isinstance(bar, Rectangle)]
    assert bars == [10_000, 5012, 4988, 3, 3]
    words = written(axes)
    for said in ("10000 as they are", "5012 with the what-if", "0 as they are", "3 with the what-if"):
        assert said in words
    assert "Heaters of 10000 layouts by verdict" in words


def test_bars_of_what_would_be_are_told_apart_without_colour() -> None:
    hatches = [bar.get_hatch() for bar in verdicts_chart(SUMS, theme="bw").patches]
    assert [hatch or "" for hatch in hatches] == ["", "", "////", "", "xxxx"]


def test_one_bar_stands_for_a_verdict_where_nothing_is_supposed() -> None:
    axes = verdicts_chart(replace(SUMS, is_supposed=False))
    assert [bar.get_width() for bar in axes.patches if isinstance(bar, Rectangle)] == [10_000, 3]


def test_file_is_the_same_every_time() -> None:
    assert verdicts_file(SUMS, "svg") == verdicts_file(SUMS, "svg")
    assert verdicts_file(SUMS, "png").startswith(b"\x89PNG")
