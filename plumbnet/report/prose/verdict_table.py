"""The table of heaters that opens a report on many: verdict, pressures, growth, what opens first."""

from collections.abc import Iterator, Sequence

from plumbnet.layout.units import PRESSURE, VOLUME, Units, show
from plumbnet.report.prose.word_colours import Paint
from plumbnet.rules.facts import Facts

TABLE_HEAD = ("heater", "verdict", "static", "limit", "settles at", "grows by", "opens first")
"""What the columns hold."""


def table(facts: Facts, paint: Paint) -> Iterator[str]:
    """A row for each heater, in columns."""
    yield from _columns([TABLE_HEAD, *table_rows(facts)], paint)


def table_rows(facts: Facts) -> Iterator[tuple[str, ...]]:
    """The cells of each heater, under `TABLE_HEAD`."""
    for heater in facts.heaters:
        first = heater.ladder[0] if heater.ladder else None
        yield (
            heater.name,
            heater.verdict.value,
            pressure_in_words(heater.static_pa, facts.units),
            pressure_in_words(heater.limit_pa, facts.units),
            pressure_in_words(heater.settled_pa, facts.units),
            show(heater.expansion_m3, VOLUME, facts.units),
            f"{first.outlet} at {pressure_in_words(first.opens_pa, facts.units)}" if first else "nothing",
        )


def _columns(rows: Sequence[tuple[str, ...]], paint: Paint) -> Iterator[str]:
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for number, row in enumerate(rows):
        cells = [cell.ljust(width) for cell, width in zip(row, widths, strict=True)]
        if number:
            cells[1] = paint(cells[1], row[1])
        yield "  ".join(cells).rstrip()


def pressure_in_words(pressure_pa: float | None, units: Units) -> str:
    """A pressure in the units of a report; "not held" where nothing holds it."""
    return "not held" if pressure_pa is None else show(pressure_pa, PRESSURE, units)
