"""How far an answer holds, in words: a table of the numbers that matter, those that do not, and how far cures hold."""

from collections.abc import Iterator

from plumbnet.layout.units import LENGTH, PRESSURE, TEMPERATURE, TEMPERATURE_DIFFERENCE, Units, show
from plumbnet.report.output import record_blocks
from plumbnet.report.prose import MOST_NAMED, Block, Heading, Paragraph, Points, Table, document_text
from plumbnet.report.studies.sweep_report import turn_in_words
from plumbnet.report.text import CAUTION
from plumbnet.rules import listed
from plumbnet.study.contingency import Error
from plumbnet.study.margins import MOST_HIGHER_M, MOST_WARMER_K, CureMargins, Margin, Margins, Turning, UncertainNumber

ANY = "any"
"""Stands where nothing turns as far as was tried."""
_HEAD = ("number", "in the file", "holds from", "what turns below", "holds up to", "what turns above")


def margins_text(found: Margins) -> str:
    """The margins as text of a hundred columns; ends with a line break."""
    return document_text(list(_document(found)))


def _document(found: Margins) -> Iterator[Block]:
    report = found.report
    yield Heading(f"{report.system.title or report.system.record.file}: how far it holds", 1)
    yield Paragraph(report.system.record.file, "file")
    if report.scenario is not None:
        yield Paragraph(report.scenario, "scenario")
    yield Paragraph(report.rules.in_full, "rules")
    if found.heater is not None:
        yield Paragraph(f"{found.heater}: its verdict, and errors about it", "looked at")
    yield from margins_blocks(found)
    yield from record_blocks(report)
    yield Paragraph(CAUTION)


def margins_blocks(found: Margins) -> Iterator[Block]:
    """The margins without what stands round them: the numbers that turn something, the others, then the cures."""
    units = found.report.facts.units
    turning = [one for one in found.numbers if not one.is_free]
    yield Paragraph(_how(found, units))
    if turning:
        yield Table(_HEAD, tuple(_row(one, units) for one in turning))
    free = [number_in_words(one.number) for one in found.numbers if one.is_free]
    if free:
        yield Paragraph(f"Any value of these will do, as far as was tried: {listed(free)}.")
    near = [nearness_in_words(one, units) for one in turning if one.is_within_accuracy]
    if near:
        yield Points(tuple(near))
    for cure in found.cures:
        yield from _cure(cure, units)


def _how(found: Margins, units: Units) -> str:
    what = "a verdict or an error" if found.heater is None else f"the verdict of {found.heater}, or an error about it,"
    if not found.numbers:
        return "The file has no number of which it is asked how far it may stray."
    pressures = [one.number.highest for one in found.numbers if one.number.is_pressure]
    highest = f"pressures up to {show(max(pressures), PRESSURE, units)}, " if pressures else ""
    warmer, higher = show(MOST_WARMER_K, TEMPERATURE_DIFFERENCE, units), show(MOST_HIGHER_M, LENGTH, units)
    return (
        f"Each number is moved by itself, the others as they are, to the nearest value on either side at which {what} "
        f"turns. Tried were {highest}setpoints within {warmer}, heights within {higher}, volumes from half to double."
    )


def _row(margin: Margin, units: Units) -> tuple[str, ...]:
    number, below, above = margin.number, margin.below, margin.above
    told = _shown(number, number.told, units)
    return (
        number_in_words(number),
        told,
        ANY if below is None else _shown(number, below.holds_to, units),
        "" if below is None else turning_in_words(below),
        ANY if above is None else _shown(number, above.holds_to, units),
        "" if above is None else turning_in_words(above),
    )


def number_in_words(number: UncertainNumber) -> str:
    """What the number is of."""
    return f"{number.field.replace('_', '-')} of {number.part}"


def _shown(number: UncertainNumber, value: float, units: Units) -> str:
    return show(value, number.dimension, units)


def turning_in_words(turning: Turning) -> str:
    """What turns: verdicts, errors that are new, and errors that are gone."""
    if turning.outcome.refused:
        return f"nothing can be computed: {turning.outcome.refused}"
    told = [turn_in_words(one) for one in turning.outcome.turns]
    told += [f"new error {words}" for words in _errors(turning.outcome.errors)]
    told += [f"no more error {words}" for words in _errors(turning.gone)]
    more = [f"and {len(told) - MOST_NAMED} more"] if len(told) > MOST_NAMED else []
    back = ["turns back further on"] if turning.turns_back else []
    return "; ".join((*told[:MOST_NAMED], *more, *back))


def _errors(errors: tuple[Error, ...]) -> Iterator[str]:
    """Each name once, with the first part and how many more there are."""
    for name in dict.fromkeys(one.name for one in errors):
        first, *others = (one.part for one in errors if one.name == name)
        yield f"{name} ({first}{f' and {len(others)} more' if others else ''})"


def nearness_in_words(margin: Margin, units: Units) -> str:
    """That a number is nearer to a turn than it can be read on site."""
    number, least = margin.number, margin.least or 0.0
    dimension = TEMPERATURE_DIFFERENCE if number.dimension is TEMPERATURE else number.dimension
    gauge = "thermometer" if number.dimension is TEMPERATURE else "gauge"
    reads = show(number.accuracy or 0.0, dimension, units)
    near = f"{number_in_words(number)} is {show(least, dimension, units)} from a turn"
    return f"The {near}, no further than a {gauge} is read to ({reads})."


def _cure(cure: CureMargins, units: Units) -> Iterator[Block]:
    yield Heading(f"Once {cure.heater} is cured", 3)
    yield Paragraph(cure.title)
    yield Points(tuple(_cured(one, units) for one in cure.numbers))
    if any(one.is_within_accuracy for one in cure.numbers):
        yield Paragraph(
            "This cure holds only within the accuracy of a gauge: choose it larger, or read with more care."
        )


def _cured(margin: Margin, units: Units) -> str:
    name, told = number_in_words(margin.number), _shown(margin.number, margin.number.told, units)
    near = f" {nearness_in_words(margin, units)}" if margin.is_within_accuracy else ""
    return f"The {name}, {told}, {range_in_words(margin, units)}.{near}"


def range_in_words(margin: Margin, units: Units) -> str:
    """Between what a number holds, in words: "holds up to 71 psi", "holds between 55 psi and 66 psi"."""
    low, high = (
        None if one is None else _shown(margin.number, one.holds_to, units) for one in (margin.below, margin.above)
    )
    if low is None:
        return "holds whatever it is" if high is None else f"holds up to {high}"
    return f"holds from {low}" if high is None else f"holds between {low} and {high}"
