"""Words that carry a meaning."""

import pytest

from plumbnet.report.prose.word_colours import PAINTS, plain
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Severity


@pytest.mark.parametrize("meaning", [*Verdict, *Severity])
def test_every_verdict_and_severity_has_a_colour(meaning: Verdict | Severity) -> None:
    assert PAINTS[meaning.value]


def test_plain_words_are_left_as_they_are() -> None:
    assert plain("TRAPPED", "trapped") == "TRAPPED"
