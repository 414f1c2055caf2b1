"""A calculation sheet to a document: the result first, then what went in, every step, and what to mind."""

from collections.abc import Iterable, Iterator, Sequence

from plumbnet.analysis.sizing_sheet import Section, Sheet, SheetItem
from plumbnet.layout.units import PRESSURE, VOLUME, Units, show
from plumbnet.report.output import program_line
from plumbnet.report.prose import (
    Block,
    Heading,
    Paragraph,
    Points,
    Steps,
    Table,
    at_least,
    names_in_short,
    printed_number,
    spoken,
    to_markdown,
    written_step,
)
from plumbnet.report.sheets.dense_text import SYMBOL, dense_text
from plumbnet.report.sheets.heated_water_rows import heated_water_rows, origin_on_sheet
from plumbnet.report.studies import margins_blocks
from plumbnet.report.text import CAUTION
from plumbnet.rules import capitalised, listed, place
from plumbnet.rules.facts import Verdict
from plumbnet.study.margins import Margins

_ANSWERS = {
    Verdict.OPEN: "its water can go back, and it needs no tank. What follows is what it would need if that way were "
    "closed",
    Verdict.ON_DEMAND: "it fires only while water runs, and needs no tank. What follows is what it would need if its "
    "own water were heated with every fixture shut",
    Verdict.CONTROLLED: "its way back is closed, and what is fitted keeps the pressure at or below the limit. What "
    "follows proves it, and sizes the tank that would do it alone",
    Verdict.TRAPPED: "its way back is closed, and nothing keeps the pressure at or below the limit. It needs the tank "
    "that follows; a relief valve is no control",
    Verdict.SEALED: "its way back is closed, and no relief valve can open: DANGER. First a relief valve, and no heat "
    "until it is there; then the tank that follows",
}


def sheet_text(sheet: Sheet) -> str:
    """One sheet as text, in its own units."""
    return sheets_text([sheet], sheet.units)


def sheets_text(sheets: Iterable[Sheet], units: Units, margins: Margins | None = None) -> str:
    """The sheets as text of a hundred columns, and how far what they rest on may stray."""
    return "\n\n".join(dense_text(blocks) for blocks in _documents(sheets, units, margins))


def sheets_markdown(sheets: Iterable[Sheet], units: Units, margins: Margins | None = None) -> str:
    """The sheets as one Markdown document, a rule between each two, and how far what they rest on may stray."""
    return "\n---\n\n".join(to_markdown(blocks) for blocks in _documents(sheets, units, margins))


def _documents(sheets: Iterable[Sheet], units: Units, margins: Margins | None) -> Iterator[list[Block]]:
    """A document for each sheet; behind the last, once for all, the margins."""
    documents = [list(sheet_blocks(sheet, units)) for sheet in sheets]
    if margins is not None and documents:
        documents[-1] += [Heading("How far it holds"), *margins_blocks(margins)]
    yield from documents


def sheet_blocks(sheet: Sheet, units: Units, *, others: Sequence[str] = ()) -> Iterator[Block]:
    """The document of a sheet; `others` are heaters of which it is the sheet as well."""
    yield from _head(sheet, [sheet.heater.name, *others])
    yield Heading("Result")
    yield Table(("what", "value"), tuple(_result(sheet, units)))
    yield Heading("What goes in")
    yield _items(sheet, sheet.inputs, units)
    yield Table(("heated water", "volume", "warmed by", "from"), tuple(heated_water_rows(sheet, units)))
    yield Heading("Steps")
    yield Paragraph("abs: from the vacuum; v(T, p), p_sat(T): from a table of water, v_mix(T): of the mixture.")
    first = 1
    for section in sheet.sections:
        yield from _section(sheet, section, units, first)
        first += len(section.steps)
    yield Heading("Taken for granted")
    yield Points(tuple(capitalised(text) for text in sheet.assumptions))
    yield Heading("Mind")
    yield Points((*(capitalised(text) for text in sheet.cautions), CAUTION))


def _head(sheet: Sheet, heaters: Sequence[str]) -> Iterator[Block]:
    named, method = names_in_short(heaters), sheet.method
    yield Heading(f"Expansion tank for {named}", 1)
    if sheet.title:
        yield Paragraph(sheet.title, "Building")
    yield Paragraph(f"{sheet.file}, SHA-256 {sheet.sha256}", "File")
    if sheet.scenario is not None:
        yield Paragraph(sheet.scenario, "Scenario")
    yield Paragraph(f"{sheet.rules_title} ({sheet.rules}), SHA-256 {sheet.rules_sha256}", "Rules")
    yield Paragraph(program_line(), "Program")
    yield Paragraph(f"{method.title} ({method.name}; {method.chosen}). Source: {method.source}", "Method")
    is_one = len(heaters) == 1
    kind = f"{'' if is_one else 'each '}{spoken(sheet.heater.kind)}, {'is' if is_one else 'are'}"
    yield Paragraph(f"{named}, {kind} {sheet.verdict.value.upper()}: {_ANSWERS[sheet.verdict]}.", "Verdict")


def _result(sheet: Sheet, units: Units) -> Iterator[tuple[str, str]]:
    yield from _tank(sheet, units)
    hand = sheet.at_hand
    if hand is None:
        return
    yield "tanks at hand", f"{listed(hand.tanks)}, for {listed(hand.heaters)}"
    grows, takes = (show(value, VOLUME, units, 4) for value in (hand.growth_m3, hand.takes_m3))
    short = f"; {show(hand.short_m3, VOLUME, units, 4)} finds no room" if hand.short_m3 else ""
    yield "they take", f"{takes} up to the limit, of {grows} that the water grows by{short}"
    if hand.settled_pa is not None:
        limit = show(sheet.heater.limit_pa, PRESSURE, units)
        yield "they settle", f"at {show(hand.settled_pa, PRESSURE, units)} at the heater; the limit there is {limit}"


def _tank(sheet: Sheet, units: Units) -> Iterator[tuple[str, str]]:
    outcome = sheet.outcome
    if outcome.tank_m3 is None:
        yield "tank", capitalised(outcome.refusal)
        return
    least = at_least(outcome.tank_m3, units)
    beside = f", beside {listed(outcome.beside)} as now" if outcome.beside else ""
    yield "smallest tank", f"{least}{beside}"
    if outcome.holds_m3 is not None and outcome.method_m3 is not None:
        tried, alone = at_least(outcome.holds_m3, units), at_least(outcome.method_m3, units)
        yield "by trial", f"{tried} holds every place in its reach; the method asks {alone} for all the water alone"
    if outcome.nominal_m3 is None:
        yield "tank to fit", f"several: no size of {outcome.sizes_from} is so large; together at least {least}"
    else:
        yield "tank to fit", f"{show(outcome.nominal_m3, VOLUME, units, 4)}, the next size up of {outcome.sizes_from}"
    if outcome.charge_pa is None:
        yield "kind", "an open tank above the highest point, its vent never shut off"
    else:
        yield "charge", f"{show(outcome.charge_pa, PRESSURE, units)} at the tank, before water stands behind it"
    yield "connect", f"{place(outcome.at)}, with no check between it and the heater"
    if outcome.why:
        yield "why there", f"it is {outcome.why}"
    if outcome.settled_pa is not None:
        yield "settles", f"at {show(outcome.settled_pa, PRESSURE, units)} at the tank, as the method counts the growth"


def _items(sheet: Sheet, items: tuple[SheetItem, ...], units: Units) -> Table:
    rows = (
        (
            item.symbol,
            item.name,
            printed_number(item.symbol, item.value, item.dimension, units).with_unit,
            origin_on_sheet(sheet, item.origin),
        )
        for item in items
    )
    return Table((SYMBOL, "what", "value", "from"), tuple(rows))


def _section(sheet: Sheet, section: Section, units: Units, first: int) -> Iterator[Block]:
    yield Heading(section.title, 3)
    if section.items:
        yield _items(sheet, section.items, units)
    if section.steps:
        yield Steps(tuple(written_step(step, units) for step in section.steps), first)
