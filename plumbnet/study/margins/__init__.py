"""How far an answer holds: of each number that nobody knows exactly the nearest turn of a verdict or an error.

Which numbers these are their kinds declare. Each is moved alone, on a copy of the layout, between the pressures at
which anything can turn, and the turn is found by bisection. Heights, volumes and setpoints, of which more is only ever
worse or only ever better, are first moved all together: where nothing turns then, none of them can matter.
"""

from plumbnet.study.margins.layout_margins import MOST_MARGINS, margins_if_small, margins_of
from plumbnet.study.margins.margin import CureMargins, Margin, Margins, Turning, UncertainNumber
from plumbnet.study.margins.street_band import StreetBand, street_bands
from plumbnet.study.margins.uncertain_numbers import MOST_HIGHER_M, MOST_WARMER_K

__all__ = [
    "MOST_HIGHER_M",
    "MOST_MARGINS",
    "MOST_WARMER_K",
    "CureMargins",
    "Margin",
    "Margins",
    "StreetBand",
    "Turning",
    "UncertainNumber",
    "margins_if_small",
    "margins_of",
    "street_bands",
]
