"""A report to its numbers that nobody knows exactly, and between what each is tried."""

from collections.abc import Iterator, Mapping
from typing import Final

from plumbnet.analysis import Report
from plumbnet.layout.model import KINDS, Stray
from plumbnet.layout.units import LENGTH, PRESSURE, TEMPERATURE, VOLUME, Dimension, quantity_of
from plumbnet.study.margins.margin import UncertainNumber

HIGHEST_PA: Final = 1_000_000.0
"""Pressure up to which numbers are tried, 10 bar (145 psi), and half as high again as any that is higher."""
MOST_WARMER_K: Final = 20.0
"""How far temperatures are tried on either side, 36 degF."""
MOST_HIGHER_M: Final = 1.5
"""How far heights are tried on either side, 4.9 ft: nobody takes one storey for another."""
_FAR: Final[Mapping[Dimension, float]] = {TEMPERATURE: MOST_WARMER_K, LENGTH: MOST_HIGHER_M}


def uncertain_numbers(report: Report) -> tuple[UncertainNumber, ...]:
    """Every such number, in the order of the file."""
    return tuple(
        number
        for name, part in report.system.parts.items()
        if name in report.system.written
        for stray in part.strays()
        for number in _numbers(report, name, stray)
    )


def _numbers(report: Report, name: str, stray: Stray) -> Iterator[UncertainNumber]:
    """The number, where the field is a quantity, as all of them are."""
    part = report.system.parts[name]
    info = KINDS[part.kind].model_fields[stray.field]
    quantity = quantity_of(info)
    if quantity is None:
        return
    told, dimension = float(getattr(part, stray.field)), quantity.dimension
    lowest, highest = _range(dimension, told)
    accuracy = dict(_accuracies(report, name)).get(dimension)
    yield UncertainNumber(name, info.alias or stray.field, dimension, told, lowest, highest, stray.together, accuracy)


def _range(dimension: Dimension, told: float) -> tuple[float, float]:
    if dimension is PRESSURE:
        return 0.0, max(HIGHEST_PA, 1.5 * told)
    if dimension is VOLUME:
        return told / 2, told * 2
    return told - _FAR[dimension], told + _FAR[dimension]


def _accuracies(report: Report, part: str) -> Iterator[tuple[Dimension, float]]:
    """What gauges read to, by what they read."""
    profile = report.profile_of(part)
    yield PRESSURE, profile.gauge_pressure.value_pa
    yield TEMPERATURE, profile.gauge_temperature.value_k
