"""A heating circuit whose fill has no backflow preventer, or one that is not good enough."""

from collections.abc import Iterator, Sequence

from plumbnet.layout.model import BackflowProtection
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, FillFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import listed

BAD = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  sink: fixture
  fill-check: check_valve  # <- fill-without-preventer
  reducer: {kind: pressure_reducer, set: 12 psi}
  back: tee
  tank: {kind: expansion_tank, volume: 4 gal, precharge: 12 psi}
  boiler: {kind: boiler, volume: 5 gal, setpoint: 170 degF, relief: {pressure: 30 psi}}
  pump: circulator
  hall: {kind: emitter, volume: 4 gal}
runs:
  - street -> split -> sink.cold
  - split -> fill-check -> reducer -> back -> tank
  - boiler -> pump -> hall -> back -> boiler
""")

GOOD = BAD.altered("""
  fill-check: reduced_pressure_assembly
""")


@requirement(
    "fill-without-preventer",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="fill_preventer",
    asks="A backflow preventer that is good enough stands wherever a heating circuit is joined to drinking water.",
    of="fills of heating circuits",
)
def fill_without_preventer(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Water of a heating circuit can come back to drinking water past no preventer that the rules take.

    It has stood in steel and iron, with what was put into it against rust and frost; when the street falls, what people
    drink draws it in. A plain check is none: one grain holds it open. Fit a preventer of a sort that the rules name in
    the line of the fill. Of several in one line the best counts; a filling loop that is shut, or an air gap, parts the
    two.
    """
    for fill in facts.fills:
        short = [way for way in fill.ways if not _is_good(facts, profile, fill, way)]
        if fill.is_parted:
            yield Met((fill.name,), _parted(facts, fill))
        elif short:
            yield _breach(facts, profile, fill, min(short, key=lambda way: _best(facts, way)))
        else:
            kept = tuple(dict.fromkeys(name for way in fill.ways for name in way))
            parts = tuple(dict.fromkeys((fill.leads, *kept)))
            yield Met(parts, f"kept apart by {listed([_with_sort(facts, name) for name in kept])}")


def _parted(facts: Facts, fill: FillFacts) -> str:
    if _sort(facts, fill.name) is BackflowProtection.AIR_GAP:
        return "an air gap parts the two"
    return "it is shut or taken off, and parts the two"


def _is_good(facts: Facts, profile: Profile, fill: FillFacts, way: Sequence[str]) -> bool:
    sorts = [_sort(facts, name) for name in way]
    if BackflowProtection.AIR_GAP in sorts:
        return True
    return any(profile.fill_preventer.takes(sort, antifreeze=fill.antifreeze) for sort in sorts)


def _breach(facts: Facts, profile: Profile, fill: FillFacts, way: Sequence[str]) -> Breach:
    parts = tuple(dict.fromkeys((fill.leads, fill.name, fill.circuit)))
    asked = listed(profile.fill_preventer.asked(antifreeze=fill.antifreeze), "or")
    if fill.is_drawn:
        text = f"people draw the water of {fill.name}, which has antifreeze in it; the rules ask for {asked} between."
        return Breach(parts, text, APART)
    if way:
        best = max(way, key=lambda name: _rank(facts, name))
        found = f"{_with_sort(facts, best)} is the best that keeps the water of {fill.circuit} from the drinking water"
    else:
        found = f"no backflow preventer keeps the water of {fill.circuit} from the drinking water at {fill.name}"
    return Breach(
        parts,
        f"{found}; the rules ask for {asked}{' where there is antifreeze' if fill.antifreeze else ''}.",
        f"Fit such a preventer in the line of {fill.name}; the code says who tests it.",
    )


APART = "Shut it off from the taps, flush them, and fill it as a circuit of its own behind such a preventer."
"""What to do about antifreeze in water that people draw."""


def _best(facts: Facts, way: Sequence[str]) -> int:
    return max((_rank(facts, name) for name in way), default=0)


def _rank(facts: Facts, name: str) -> int:
    sort = _sort(facts, name)
    return 0 if sort is None else sort.rank


def _sort(facts: Facts, name: str) -> BackflowProtection | None:
    return facts.system.parts[name].protects


def _with_sort(facts: Facts, name: str) -> str:
    sort = _sort(facts, name)
    return name if sort is None else f"{name} ({sort.value})"
