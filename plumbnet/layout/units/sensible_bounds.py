"""Between what the quantities of a building can lie at all, in SI, so that a slip is told at the line where it stands.

Common sense bounds, invented, and far beyond whatever was ever built: each says what was thought of. They catch slips
of a unit or a zero, and judge nothing; what is usual is another matter (`Quantity.usual`), and so is what a code asks.
"""

from typing import Final

MOST_STANDING_PA: Final = 10e6
"""100 bar, 1450 psi: the pumps of the tallest towers hold some 40 bar, and hot-water plants as much."""
LEAST_SET_PA: Final = 1e3
"""10 mbar, 0.15 psi: no reducer is set so low, and no relief valve of anything that holds water."""
LEAST_HEAD_PA: Final = 10.0
"""A millimetre of water: the smallest circulators lift some hundred."""
LEAST_HELD_M3: Final = 1e-6
"""A millilitre: the smallest tank is a shock arrester of 50 mL, and a heater under a basin holds as much."""
MOST_HELD_M3: Final = 1e4
"""10,000 m3, 2.6 million gal: the largest vessels under pressure hold some hundreds, the boilers of a town less."""
DEEPEST_M: Final = -5e3
"""The deepest mines are 4 km deep; a datum may be the sea."""
HIGHEST_M: Final = 10e3
"""The highest town lies at 5.1 km, and no mountain reaches higher."""
LONGEST_M: Final = 100e3
"""A pipe of 100 km leads to another town."""
FREEZES_K: Final = 273.15
"""0 degC, 32 degF: colder water is ice."""
COLDEST_FILL_K: Final = 223.15
"""-50 degC, -58 degF: what is filled in may be mixed with antifreeze, and that of any heating freezes above this."""
HOTTEST_K: Final = 473.15
"""200 degC, 392 degF: the hottest mains of a town are some 180 degC."""
HOTTEST_OPENING_K: Final = 523.15
"""250 degC, 482 degF: relief valves open by temperature near 99 degC, for water of any plant below this."""
