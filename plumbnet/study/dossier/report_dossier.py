"""A report to the dossier that a page is written from: remedies, layouts with them, warm-ups, scenarios, sheets."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from plumbnet.analysis import Report
from plumbnet.analysis.sizing_sheet import Sheet, sheets
from plumbnet.analysis.warmup import NoWarmUp
from plumbnet.layout.yaml import LayoutError
from plumbnet.rules.facts import TROUBLED
from plumbnet.study.dossier.tank_curves import NoChart, Sizes, sizer
from plumbnet.study.dossier.warm_ups import WarmUps, warm_ups
from plumbnet.study.dossier.whole_cure import CuredWhole, cured_whole
from plumbnet.study.margins import Margins, StreetBand, margins_if_small, street_bands
from plumbnet.study.remedies import Found, Proposal, remedies_if_small, with_remedy
from plumbnet.study.whatif import WhatIf, whatif

MOST_PICTURES = 4
"""Heaters whose cure is made, to be drawn."""
MOST_WARM_UPS = 2
"""Heaters whose warm-up is run."""
MOST_TOGETHER = 8
"""Heaters that share one water; the warm-up of more takes too long to run beside a page."""
MOST_SHEETS = 12
"""Heaters with a sheet, those in trouble before others."""


@dataclass(frozen=True, slots=True)
class Dossier:
    """All that a page tells.

    `found` are the remedies (None: the layout is so large that they were not looked for); `cures` the layout with the
    first remedy of a heater, of a few and each remedy once; `whatifs` one for each scenario of the file, and `refused`
    why nothing can be computed in a scenario. `date` is what its reader wants printed as the date; empty for none.
    `warm_ups` are those of heaters that are cured, and `cold` says why there is none. `sheets` are the calculations,
    `sizes` the tanks of heaters that need one, `whole` what the chosen remedies make of the layout together. How far it
    all holds is in `margins` (None: the layout is so large that they were not looked for), and between what the streets
    of heaters may stand in `bands`.
    """

    report: Report
    found: Found | None
    cures: Mapping[str, Proposal]
    whatifs: tuple[WhatIf, ...]
    refused: Mapping[str, str]
    date: str = ""
    warm_ups: Mapping[str, WarmUps] = field(default_factory=dict)
    cold: Mapping[str, str] = field(default_factory=dict)
    sheets: tuple[Sheet, ...] = ()
    sizes: Mapping[str, Sizes] = field(default_factory=dict)
    margins: Margins | None = None
    bands: tuple[StreetBand, ...] = ()
    whole: CuredWhole | None = None


def dossier(report: Report, *, date: str = "") -> Dossier:
    """The dossier of a report; of a report on a scenario without the others, which start from the layout as it is."""
    found = remedies_if_small(report)
    cures = _cures(report, found or {})
    refused, cold = dict[str, str](), dict[str, str]()
    scenarios = tuple(_scenarios(report, refused)) if report.scenario is None else ()
    warmed = dict(_warm_ups(report, cures, cold))
    chosen = sorted(report.heaters, key=lambda heater: heater.verdict not in TROUBLED)[:MOST_SHEETS]
    calculated = tuple(sheets(report, chosen))
    sizes = dict(_sizes(report, calculated))
    margins = margins_if_small(report, found=found)
    return Dossier(
        report,
        found,
        cures,
        scenarios,
        refused,
        date,
        warmed,
        cold,
        calculated,
        sizes,
        margins=margins,
        bands=() if margins is None else street_bands(report, margins.numbers),
        whole=cured_whole(report, found or {}),
    )


def _cures(report: Report, found: Found) -> dict[str, Proposal]:
    """The layout with the first remedy of a heater; where two have the same, with that of the first."""
    first: dict[str, str] = {}
    for heater, own in found.items():
        if own:
            first.setdefault(own[0].title, heater)
    return {heater: with_remedy(report, found[heater][0]) for heater in list(first.values())[:MOST_PICTURES]}


def _warm_ups(report: Report, cures: Mapping[str, Proposal], cold: dict[str, str]) -> Iterator[tuple[str, WarmUps]]:
    together = {heater.name: len(heater.shares_with) for heater in report.heaters}
    for heater in list(cures)[:MOST_WARM_UPS]:
        if together[heater] < MOST_TOGETHER:
            try:
                yield heater, warm_ups(report, heater, cures[heater])
            except NoWarmUp as error:
                cold[heater] = str(error)


def _scenarios(report: Report, refused: dict[str, str]) -> Iterator[WhatIf]:
    for name in [*report.system.scenarios, *report.system.faulty_scenarios]:
        try:
            yield whatif(report, scenario=name)
        except LayoutError as error:
            refused[name] = "; ".join(fault.sentence for fault in error.faults)


def _sizes(report: Report, calculated: tuple[Sheet, ...]) -> Iterator[tuple[str, Sizes]]:
    size_of = sizer(report)
    for sheet in calculated:
        if sheet.verdict in TROUBLED:
            try:
                yield sheet.heater.name, size_of(sheet.heater.name)
            except NoChart:
                continue
