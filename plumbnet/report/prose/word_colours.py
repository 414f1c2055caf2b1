"""Words that carry a meaning, and how a terminal colours them."""

from collections.abc import Callable

from plumbnet.rules import Severity
from plumbnet.rules.facts import Verdict

Paint = Callable[[str, str], str]
"""Called with a text and what it is (a verdict or a severity); returns the text coloured or as it is."""

PAINTS = {
    Verdict.OPEN.value: "green",
    Verdict.CONTROLLED.value: "cyan",
    Verdict.ON_DEMAND.value: "blue",
    Verdict.TRAPPED.value: "red",
    Verdict.SEALED.value: "bright_red",
    Severity.ERROR.value: "red",
    Severity.WARNING.value: "yellow",
    Severity.NOTE.value: "blue",
}
"""Colours of the words that carry a meaning, by their names in ANSI."""


def plain(text: str, _meaning: str) -> str:
    """The text as it is."""
    return text
