"""A heater's case in, what its calculation takes for granted and what to mind out, in words."""

from collections.abc import Iterator, Sequence

from plumbnet.analysis.observations import GAS
from plumbnet.analysis.report import Report
from plumbnet.analysis.sizing_sheet.sheet_model import MethodUsed
from plumbnet.analysis.verdict import Case
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.sizing import Sizing
from plumbnet.rules import agreeing, listed
from plumbnet.rules.facts import HeaterFacts, Verdict

ALWAYS_TO_MIND = (
    "all heated water goes from its cold temperature to its highest with every fixture shut",
    GAS,
    "pipes and vessels do not give way or grow, unless a step counts it",
    "the pressure of the air is that at sea level; higher up, a tank takes a little more",
    "water is 1000 kg/m3 where a height is turned into a pressure",
)
"""What every sheet takes for granted."""


def sheet_cautions(report: Report, case: Case) -> Iterator[str]:
    """What is taken for granted: of every calculation, of this file."""
    yield from ALWAYS_TO_MIND
    if len({piece.name for water in case.tank.waters for piece in water.pieces}) < sum(
        len(heated.pieces) for heated in case.network.heated if heated.name in case.company.heaters
    ):
        yield "water that several heaters warm counts once, for the one that warms it most"
    unsaid = [
        f"{words} ({listed(parts)})" for words, parts in report.facts.assumed.items() if words not in ALWAYS_TO_MIND
    ]
    if unsaid:
        yield f"as the file says nothing of it: {'; '.join(unsaid)}"


def cautions(
    report: Report, heater: HeaterFacts, case: Case, method: MethodUsed, sizings: Sequence[Sizing]
) -> Iterator[str]:
    """What a reader must mind before building by the sheet."""
    if heater.verdict is Verdict.SEALED:
        yield "no relief valve can open: no heat until one stands on the heater's own tapping, whatever tank is fitted"
    elif not heater.relieved_by and not heater.vented:
        yield "only pipes and fittings may stand between a heater and its relief valve, and none stands there"
    if not method.verified:
        yield f"{method.title} is quoted from memory: check it against the edition in force"
    for one in sizings:
        yield from one.notes
    yield from _fill(report, case, sizings)
    lost = [tank.name for tank in report.facts.tanks if tank.is_waterlogged]
    if lost:
        yield f"{agreeing(lost, 'takes')} nothing: the charge is lost"


def _fill(report: Report, case: Case, sizings: Sequence[Sizing]) -> Iterator[str]:
    """Where the layout's static pressure is not one that the method's vessel may be filled to."""
    static_pa = case.tank.task.static_pa
    static_abs_pa = static_pa + ATMOSPHERE_PA
    fills = [one.fill_abs_pa for one in sizings if one.fill_abs_pa is not None]
    charges = [one.charge_abs_pa for one in sizings if one.charge_abs_pa is not None]
    show = report.facts.pressure
    if fills and static_abs_pa < max(fills):
        least = show(max(fills) - ATMOSPHERE_PA)
        yield f"the static pressure of {show(static_pa)} is below the {least} that fills the tank's reserve"
    elif charges and static_abs_pa < min(charges) - 1.0:
        charge = show(min(charges) - ATMOSPHERE_PA)
        yield f"the static pressure of {show(static_pa)} is below the charge of {charge}"
