"""The tubes as an author looks them up: names, sizes, dimensions, the water they hold, and where each value is from."""

from collections.abc import Iterable, Iterator
from itertools import groupby

from plumbnet.layout.units import FOOT, GALLON, INCH, LITRE, MILLI, Tube, every_tube
from plumbnet.report.prose import Block, Heading, Paragraph, Points, Table, document_text

NOMINAL = (
    "Dimensions are nominal: a real wall differs within the tolerance of its standard, and a tube of plastic may hold "
    "6 % less. What is from memory is to be looked up in the standard."
)


def tube_names() -> tuple[str, ...]:
    """Every name that a tube has before its size, in the order of the table."""
    return tuple(dict.fromkeys(each.material for each in every_tube()))


def tubes_text() -> str:
    """Every sort of tube with its sizes and its standard."""
    rows = tuple((name, _sizes(own), _standards(own)) for name, own in _by_name(every_tube()))
    return document_text(
        [
            Table(("tube", "sizes", "standard"), rows),
            Paragraph("Write one as pipe: copper-L 3/4 in. plumbnet tubes NAME tells what each size holds."),
        ]
    )


def tube_text(name: str) -> str:
    """The tubes of a name, or of all names that begin with it as those of copper do: size by size what they hold.

    Letter case does not matter. Raises KeyError for a name that no tube has.
    """
    called = name.casefold()
    family = [each for each in every_tube() if each.material.casefold().partition("-")[0] == called.partition("-")[0]]
    chosen = [each for each in family if each.material.casefold() == called] or (family if "-" not in called else [])
    if not chosen:
        raise KeyError(name)
    blocks = [block for own_name, own in _by_name(chosen) for block in _told(own_name, own)]
    return document_text([*blocks, Paragraph(NOMINAL)])


def _told(name: str, own: list[Tube]) -> Iterator[Block]:
    yield Heading(name, 1)
    columns = ("size", "outside", "wall", "bore", "holds per metre", "holds per foot")
    yield Table(columns, tuple(_row(each) for each in own))
    yield Points(tuple(dict.fromkeys(each.source for each in own)))


def _row(each: Tube) -> tuple[str, ...]:
    litres, gallons = each.volume_m3_per_m / LITRE, each.volume_m3_per_m * FOOT / GALLON
    lengths = (_length(each, metres) for metres in (each.outside_m, each.wall_m, each.inside_m))
    return each.size, *lengths, f"{litres:.4g} L", f"{gallons:.4g} gal"


def _length(each: Tube, metres: float) -> str:
    """In the unit in which the standard gives it."""
    return f"{metres / INCH:.3f} in" if each.unit == "in" else f"{metres / MILLI:.1f} mm"


def _sizes(own: list[Tube]) -> str:
    return f"{own[0].size} to {own[-1].size}" if len(own) > 1 else own[0].size


def _standards(own: list[Tube]) -> str:
    return "; ".join(dict.fromkeys(each.source for each in own))


def _by_name(chosen: Iterable[Tube]) -> Iterator[tuple[str, list[Tube]]]:
    for name, own in groupby(chosen, key=lambda each: each.material):
        yield name, list(own)
