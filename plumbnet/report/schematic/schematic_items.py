"""A system to the items and links of its drawing, with what is said of each part."""

from collections.abc import Collection, Mapping
from dataclasses import replace

from plumbnet.drawing.items import Diagram, Item, Link
from plumbnet.drawing.symbols import symbol_named
from plumbnet.layout.model import Free, Part, Role, System
from plumbnet.report.schematic.pipe_service import services
from plumbnet.rules.facts import Verdict


def diagram_of(
    system: System,
    notes: Mapping[str, tuple[str, ...]],
    *,
    verdicts: Mapping[str, Verdict] | None = None,
    ringed: Collection[str] = (),
    framed: Collection[str] = (),
) -> Diagram:
    """The piping with every part as an item: its notes beside it, then its verdict.

    What is `ringed` has a ring, what is `framed` room for a frame.
    """
    # A vent may rise above the tank it spills into.
    standing = [part.elevation_m for part in system.parts.values() if not _is_open(part) or part.source()]
    highest = max(standing, default=0.0)
    told = verdicts or {}
    items = {
        name: replace(
            _item(name, part, notes.get(name, ()), told.get(name), highest),
            is_ringed=name in ringed,
            is_framed=name in framed,
        )
        for name, part in system.parts.items()
    }
    pairs = zip(system.pipes, services(system), strict=True)
    links = tuple(Link(number, pipe.start, pipe.end, service) for number, (pipe, service) in enumerate(pairs))
    return Diagram(items, links)


def _item(name: str, part: Part, notes: tuple[str, ...], verdict: Verdict | None, highest_m: float) -> Item:
    return Item(
        name,
        symbol_named(part.drawn_as()),
        part.port_names(),
        notes if verdict is None else (*notes, verdict.value.upper()),
        verdict,
        part.elevation_m,
        is_source=part.source() is not None,
        is_on_roof=_is_open(part) and part.elevation_m >= highest_m > 0.0,
        is_quiet=_is_quiet(part),
        ways=tuple((passage.a, passage.b) for passage in part.passages() if isinstance(passage, Free)),
    )


def _is_open(part: Part) -> bool:
    """Whether water in it stands open to the air, whatever is drawn."""
    return not part.draws_at() and any(outlet.role is Role.AIR for outlet in part.outlets())


def _is_quiet(part: Part) -> bool:
    """Whether it neither heats nor supplies water, lets none out, and neither stops it nor can be shut."""
    return (
        part.heat() is None
        and part.source() is None
        and part.cushion() is None
        and not part.is_valve()
        and not any(True for _ in part.outlets())
        and all(isinstance(passage, Free) for passage in part.passages())
    )
