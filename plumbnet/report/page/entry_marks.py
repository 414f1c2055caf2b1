"""How the mark of an entry looks: a verdict as in every picture, a severity like the verdict that is as grave."""

from plumbnet.drawing import Palette, Shade
from plumbnet.rules import Severity
from plumbnet.rules.facts import Verdict

_LIKE = {Severity.ERROR: Verdict.SEALED, Severity.WARNING: Verdict.TRAPPED, Severity.NOTE: Verdict.CONTROLLED}


def looks(palette: Palette) -> dict[str, Shade]:
    """Fill and edge of each mark, by the word of its verdict or severity."""
    return {**palette.shades, **{severity.value: palette.shades[verdict] for severity, verdict in _LIKE.items()}}
