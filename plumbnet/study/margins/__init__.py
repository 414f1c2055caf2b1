"""How far an answer holds: for each number that nobody knows exactly the nearest value at which a verdict or an error turns.

Which numbers these are their kinds declare. Each is moved alone, on a copy of the layout, between the pressures at which
anything can turn, and the turn is found by bisection. Heights, volumes and setpoints, of which more is only ever worse
or only ever better, are first moved all together: where nothing turns then, none of them can matter.
"""

from plumbnet.study.margins.layout_margins import margins_of
from plumbnet.study.margins.margin import CureMargins, Margin, Margins, Turning, UncertainNumber

__all__ = ["CureMargins", "Margin", "Margins", "Turning", "UncertainNumber", "margins_of"]
