"""A diagram to the same with room kept for every state that it may come to be shown in."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace

from plumbnet.drawing.items import Diagram, Item
from plumbnet.drawing.symbols import Symbol

_SHORTEST = 3
"""Signs of a line of a name, at the least, where it is broken in two."""


@dataclass(frozen=True, slots=True)
class Reservation:
    """What of a picture may change: the symbols that a part may be drawn by, and who may be ringed.

    `letter_size` is that of all words, `longest` the number of signs from which on a name is broken in two lines.
    `last_word` is the longest that may stand below the name of a part with a tone. The `named` have their
    names for words, all others what they have.
    """

    symbols: Mapping[str, tuple[Symbol, ...]] = field(default_factory=dict)
    ringed: Collection[str] = ()
    named: Collection[str] = ()
    last_word: str = ""
    letter_size: float = 16.0
    longest: int = 9

    def variants(self, item: Item) -> tuple[Symbol, ...]:
        """The symbols of an item, that by which it is drawn now first."""
        others = (symbol for symbol in self.symbols.get(item.name, ()) if symbol.name != item.symbol.name)
        return item.symbol, *others


def reserved(diagram: Diagram, reservation: Reservation) -> Diagram:
    """The diagram with every item as large as it may become."""
    return replace(diagram, items={name: _kept(item, reservation) for name, item in diagram.items.items()})


def _kept(item: Item, reservation: Reservation) -> Item:
    widest = max(reservation.variants(item), key=lambda symbol: (symbol.width, symbol.height))
    own = item.lines if item.tone is None else item.lines[:-1]
    lines = two_lines(item.name, reservation.longest) if item.name in reservation.named else own
    if item.tone is not None:
        lines = (*lines, reservation.last_word)
    is_ringed = item.name in reservation.ringed
    size = reservation.letter_size
    return replace(item, symbol=widest, lines=lines, is_ringed=False, keeps_ring_room=is_ringed, letter_size=size)


def two_lines(name: str, longest: int) -> tuple[str, ...]:
    """A name, broken behind the hyphen or slash nearest its middle where it is long; never within a word.

    >>> two_lines("heater-stop", 9), two_lines("strainer", 6), two_lines("tank", 9)
    (('heater-', 'stop'), ('strainer',), ('tank',))
    """
    breaks = [
        at for at, sign in enumerate(name, start=1) if sign in "-/ _" and _SHORTEST <= at <= len(name) - _SHORTEST
    ]
    if len(name) <= longest or not breaks:
        return (name,)
    at = min(breaks, key=lambda place: abs(len(name) / 2 - place))
    return name[:at].rstrip(" "), name[at:]
