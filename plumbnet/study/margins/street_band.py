"""Margins to the pressures at a heater between which its street may stand, to be drawn beside its ladder."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import End
from plumbnet.rules.facts import ROUNDING_PA, HeaterFacts
from plumbnet.study.margins.margin import Margin


@dataclass(frozen=True, slots=True)
class StreetBand:
    """The margin of a supply as it stands at a heater: the gauge there reads `less_pa` less than at the supply."""

    heater: str
    margin: Margin
    less_pa: float

    @property
    def low_pa(self) -> float:
        """The lowest at the heater at which all holds, or that was tried, gauge."""
        return (self.margin.number.lowest if self.margin.below is None else self.margin.below.holds_to) - self.less_pa

    @property
    def high_pa(self) -> float:
        """The highest likewise."""
        return (self.margin.number.highest if self.margin.above is None else self.margin.above.holds_to) - self.less_pa


def street_bands(report: Report, numbers: Sequence[Margin]) -> tuple[StreetBand, ...]:
    """One for each heater at which the very pressure of a supply stands that turns something, in their order."""
    found = (next(_bands(report, heater, numbers), None) for heater in report.heaters)
    return tuple(band for band in found if band is not None)


def _bands(report: Report, heater: HeaterFacts, numbers: Sequence[Margin]) -> Iterator[StreetBand]:
    piping = report.network.piping
    head_pa = {each.name: piping.heads_pa[each.inlet] for each in report.network.heated}[heater.name]
    for margin in numbers:
        number = margin.number
        source = report.system.parts[number.part].source()
        if source is None or heater.static_pa is None or margin.is_free or number.told != source.pressure_pa:
            continue
        less_pa = head_pa - piping.heads_pa[piping.node_of[End(number.part, source.port)]]
        if abs(number.told - less_pa - heater.static_pa) <= ROUNDING_PA:
            yield StreetBand(heater.name, margin, less_pa)
