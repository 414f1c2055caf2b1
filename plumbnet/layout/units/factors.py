"""The size in SI of units and standard values, each as it is defined; what is not exact is so by a double's rounding.

Source, unless a line names another: NIST Special Publication 811 (2008), appendix B.8, whose figures in boldface are
exact, and NIST Handbook 44, appendix C; definitions and years from memory. The tests hold each to scipy.constants.
"""

from typing import Final

MILLI: Final = 1e-3
CENTI: Final = 1e-2
KILO: Final = 1e3
MEGA: Final = 1e6

INCH: Final = 0.0254
"""In m, exact: international yard and pound agreement of 1959, a yard of 0.9144 m."""

FOOT: Final = 12 * INCH
"""In m, exact: a third of a yard."""

POUND: Final = 7000 * 64.79891e-6
"""In kg, exact: 0.45359237 kg, the avoirdupois pound of 7000 grains; agreement of 1959."""

GRAVITY: Final = 9.80665
"""In m/s2, exact: standard gravity, 3rd General Conference on Weights and Measures, 1901."""

PSI: Final = POUND * GRAVITY / (INCH * INCH)
"""In Pa: the weight of a pound under standard gravity on a square inch; 6894.757 Pa as printed."""

BAR: Final = 1e5
"""In Pa, exact."""

ATMOSPHERE: Final = 101_325.0
"""In Pa, exact: standard atmosphere, 10th General Conference on Weights and Measures, 1954, resolution 4; ISO 2533."""

LITRE: Final = 1e-3
"""In m3, exact: 12th General Conference on Weights and Measures, 1964."""

GALLON: Final = 231 * INCH**3
"""In m3, exact: the US gallon of 231 cubic inches."""

FLUID_OUNCE: Final = GALLON / 128
"""In m3, exact: of the US gallon."""

DEGREE_FAHRENHEIT: Final = 1 / 1.8
"""In K: a difference of one degree Fahrenheit, five ninths of a kelvin."""

ZERO_CELSIUS: Final = 273.15
"""In K, exact: 0 degC."""

BTU: Final = POUND * DEGREE_FAHRENHEIT * 4.1868 / 1e-3
"""In J: British thermal unit of the International Table, which warms a pound by a degree Fahrenheit where a calorie of
4.1868 J (exact: 5th International Conference on the Properties of Steam, 1956) warms a gram by a kelvin."""

MINUTE: Final = 60.0
HOUR: Final = 60 * MINUTE
DAY: Final = 24 * HOUR
