"""A layout with what was put into its pipes to its picture: laid out once, with room for every state of its parts."""

from collections.abc import Collection, Iterable, Sequence

from plumbnet.boards.reading_order import water_order
from plumbnet.drawing.screen import Reservation, screen_picture
from plumbnet.drawing.symbols import Symbol, symbol_named
from plumbnet.layout.edits import with_changes
from plumbnet.layout.model import End, Free, Part, System
from plumbnet.report.schematic import diagram_of
from plumbnet.rules.facts import Verdict
from plumbnet.study.touching import Touch, TouchStates

_LAST_WORD = Verdict.CONTROLLED.value.upper()
"""The longest word of a verdict."""


def board_picture(states: TouchStates, touches: Sequence[Touch]) -> dict[str, object]:
    """The picture of the layout with what some touches put into its pipes, and the places of all in it."""
    report = states.report_in(states.put_in(touches))
    system = report.system
    heaters = {name: Verdict.CONTROLLED for name, part in system.parts.items() if part.heat() is not None}
    ringed = _ringed(system, {one.name for one in states.touchables if one.pipe is None})
    diagram = diagram_of(system, {}, verdicts=heaters)
    reservation = Reservation(
        symbols=_symbols(states), ringed=ringed, named=_named(system, ringed, heaters.keys()), last_word=_LAST_WORD
    )
    picture = screen_picture(diagram, reservation, water_order(system))
    return {
        "svg": picture.svg,
        "box": [round(edge, 1) for edge in picture.box],
        "order": picture.order,
        "parts": [[name, part.kind.replace("_", " ")] for name, part in system.parts.items()],
        "pipes": [[pipe.start.part, pipe.end.part] for pipe in system.pipes],
        "touch_of": _touch_of(states, touches, system),
        "lines": {str(number): _rounded(line) for number, line in picture.lines.items()},
        "zone": {
            "pipes": {str(number): _rounded(boxes) for number, boxes in picture.pieces.pipes.items()},
            "tips": [[number, part, *_rounded([box])] for number, part, box in picture.pieces.tips],
            "parts": {name: _rounded([box])[0] for name, box in picture.pieces.parts.items()},
            "runs": {name: _rounded(boxes) for name, boxes in picture.pieces.runs.items()},
        },
    }


def _ringed(system: System, touched: Collection[str]) -> frozenset[str]:
    """The parts that may ever stand in the way of water, and be ringed for it."""
    ends = {
        name for name, part in system.parts.items() if part.draws_at() or part.is_vessel or len(part.port_names()) == 1
    }
    stopping = {name for name, part in system.parts.items() if _is_gate(part)}
    return frozenset((stopping | set(touched)) & system.parts.keys() - ends)


def _is_gate(part: Part) -> bool:
    return part.can_be_shut() or not all(isinstance(passage, Free) for passage in part.passages())


def _symbols(states: TouchStates) -> dict[str, tuple[Symbol, ...]]:
    """Every symbol by which a part may be drawn once it is touched."""
    found: dict[str, dict[str, Symbol]] = {}
    for touchable in states.touchables:
        for option in touchable.options if touchable.pipe is None else ():
            drawn_as = with_changes(states.drawn.system, option.changes).parts[touchable.name].drawn_as()
            found.setdefault(touchable.name, {})[drawn_as] = symbol_named(drawn_as)
    return {name: tuple(symbols.values()) for name, symbols in found.items()}


def _named(system: System, ringed: Collection[str], heaters: Collection[str]) -> frozenset[str]:
    """The parts with a name beside them: devices and what else is looked for, not what comes fixed to another part."""
    looked_for = {
        name for name, part in system.parts.items() if part.source() is not None or part.cushion() is not None
    }
    return frozenset(name for name in {*looked_for, *heaters, *ringed} if "/" not in name)


def _touch_of(states: TouchStates, touches: Sequence[Touch], system: System) -> dict[str, dict[str, int]]:
    """By which touchable a part and a pipe of the picture is touched; what was put into a pipe, by that of its pipe."""
    drawn = states.drawn.system
    parts = {one.name: at for at, one in enumerate(states.touchables) if one.pipe is None}
    by_ends: dict[tuple[End, End], int] = {}
    for at, one in enumerate(states.touchables):
        if one.pipe is not None:
            by_ends.setdefault(drawn.pipes[one.pipe].ends, at)
    for touch in states.put_in(touches):
        parts.update(dict.fromkeys(_brought_in(states, touch), touch.at))
    pipes = dict[str, int]()
    for number, pipe in enumerate(system.pipes):
        inner = [parts[end.part] for end in pipe.ends if end.part not in drawn.parts and end.part in parts]
        own = [by_ends[pipe.ends]] if pipe.ends in by_ends else []
        pipes.update({str(number): at for at in (inner or own)[:1]})
    return {"parts": {name: at for name, at in parts.items() if name in system.parts}, "pipes": pipes}


def _brought_in(states: TouchStates, touch: Touch) -> list[str]:
    option = states.option(touch)
    changes = () if option is None else option.changes
    placed = [one.insert or one.add for one in changes]
    return [one.part for one in placed if one is not None]


def _rounded(points: Iterable[Sequence[float]]) -> list[list[float]]:
    return [[round(value, 1) for value in point] for point in points]
