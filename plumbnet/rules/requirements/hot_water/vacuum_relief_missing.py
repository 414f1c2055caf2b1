"""A store of hot water that can be siphoned empty, with nothing by which air comes in."""

from collections.abc import Iterator

from plumbnet.layout.model import Circuit
from plumbnet.layout.units import LENGTH
from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import Facts, StoreFacts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Measured, Met, NotApplicable, Untold
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import VacuumReliefRuling
from plumbnet.rules.sentences import agreeing, listed

_SAME_HEIGHT_M = 0.001

BAD = PLAIN_HOUSE.altered("""
plumbnet: 1
rules: upc-2018
parts: ...
  street: ...
  heater:  # <- vacuum-relief-missing
    kind: storage_heater
    volume: 40 gal
    setpoint: 140 degF
    elevation: 10 ft
    relief: {pressure: 150 psi, temperature: 210 degF}
  tap: {kind: fixture, elevation: 3 ft}
""")

GOOD = BAD.altered("""
  street: ...
  split: tee
  breaker: {kind: vacuum_relief_valve, elevation: 15 ft}
runs:
  - street -> split -> heater -> tap.hot
  - split -> breaker
""")


@requirement(
    "vacuum-relief-missing",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    rests_on="vacuum_relief",
    asks="Air comes by a vacuum relief valve to a store of hot water that could otherwise be siphoned empty.",
    of="stores of hot water",
)
def vacuum_relief_missing(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A store of hot water can be siphoned empty, and nothing lets air in.

    Once the main is shut down, an outlet below a tank draws it empty, and one that is fed from below drains back:
    the heat then comes on with no water there, and a thin tank is sucked flat. Which tanks the rules mean differs. Have
    a vacuum relief valve on the cold pipe above the top of the tank, or on a tapping of its own, with no valve and no
    check between. It is no relief valve and replaces none.
    """
    if not profile.vacuum_relief.is_asked:
        yield NOT_ASKED
        return
    for store in facts.stores:
        if facts.circuit_of(store.name) is Circuit.HEATING:
            yield NotApplicable((store.name,), "nobody drinks its water: it stands in a heating circuit")
        else:
            yield _answer(facts, profile.vacuum_relief, store)


def _answer(facts: Facts, ruling: VacuumReliefRuling, store: StoreFacts) -> Answer:
    if store.air_comes_by:
        return Met((store.name, *store.air_comes_by), f"{agreeing(store.air_comes_by, 'lets')} air in")
    if ruling.asks_fed_from_below and store.is_fed_from_below:
        return _breach(ruling, (store.name,), f"{store.name} is fed from below")
    is_asked = ruling.asks_above_outlets and store.tap is not None
    if is_asked and store.is_height_given and not _is_level(store):
        return _above_an_outlet(facts, ruling, store)
    missing = list(_missing(ruling, store))
    return Untold((store.name,), listed(missing)) if missing else _safe(ruling, store, is_asked=is_asked)


def _safe(ruling: VacuumReliefRuling, store: StoreFacts, *, is_asked: bool) -> Answer:
    """The answer for a store that nothing siphons empty."""
    if is_asked:
        return Met((store.name,), measured=_measured(store))
    if ruling.asks_fed_from_below:
        return Met((store.name,), "it is fed from above")
    return NotApplicable((store.name,), "no tap draws from it")


def _above_an_outlet(facts: Facts, ruling: VacuumReliefRuling, store: StoreFacts) -> Breach:
    text = f"{store.name} stands at {facts.length(store.elevation_m)}, above {store.tap} at {facts.length(store.tap_m)}"
    return _breach(ruling, (store.name, store.tap or ""), text, _measured(store))


def _breach(ruling: VacuumReliefRuling, parts: tuple[str, ...], text: str, measured: Measured | None = None) -> Breach:
    advice = (
        f"Have one fitted on the cold pipe above the top of {parts[0]}, or on a tapping of its own, with no valve and "
        "no check between; it replaces no relief valve."
    )
    if ruling.dip_tube_serves and measured is not None:
        advice = f"{advice} A hole near the top of its dip tube does as well: where it has one, accept this."
    return Breach(parts, f"{text}, and no vacuum relief valve lets air in.", advice, measured)


def _missing(ruling: VacuumReliefRuling, store: StoreFacts) -> Iterator[str]:
    """What the file would have to say."""
    if ruling.asks_above_outlets and store.tap is not None and not store.is_height_given:
        yield "its height or that of a tap (elevation)"
    if ruling.asks_fed_from_below and store.is_fed_from_below is None:
        yield "whether it is fed from below (fed_from_below)"


def _measured(store: StoreFacts) -> Measured:
    return Measured(store.tap_m, store.elevation_m, LENGTH, at_least=True)


def _is_level(store: StoreFacts) -> bool:
    """Whether its lowest tap stands no lower than it does."""
    return store.tap_m >= store.elevation_m - _SAME_HEIGHT_M
