"""A closed heater with no control of expansion where the rules ask for one whatever the heater."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import IS_OPEN, controls, first_stops, why_closed

BAD = Example("""\
plumbnet: 1
rules: upc-2024
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  tankless: {kind: tankless_heater, setpoint: 120 degF}  # <- closed-without-control
  tap: fixture
runs:
  - street -> meter -> tankless -> tap.hot
""")

GOOD = BAD.altered("rules: ipc-2021")


@requirement(
    "closed-without-control",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="control_for",
    asks="Every closed heater has a control of expansion, one that fires on flow too.",
    of="heaters",
)
def closed_without_control(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A closed heater has no control of expansion, and the rules ask for one whatever kind of heater it is.

    It fires only while water is drawn, so by physics nothing need happen; some codes make no such difference. Fit an
    expansion tank on the building's side of what closes it.
    """
    asked = profile.control_for
    if asked.value != "every":
        yield NotApplicable((), "the rules ask for a control where a heater keeps its water hot")
        return
    for heater in facts.heaters:
        is_exempt = heater.heated_volume_m3 <= asked.exempt_volume_m3 and asked.exempt_volume_m3 > 0.0
        if heater.verdict is Verdict.OPEN:
            yield NotApplicable((heater.name,), IS_OPEN)
        elif heater.verdict is not Verdict.ON_DEMAND:
            yield NotApplicable((heater.name,), "it keeps its water hot, and is held to the pressure that comes of it")
        elif heater.has_control:
            yield Met((heater.name, *controls(heater)), "it has a control of expansion")
        elif is_exempt:
            yield NotApplicable((heater.name,), f"heaters up to {facts.volume(asked.exempt_volume_m3)} are exempt")
        else:
            yield Breach(
                (heater.name, *first_stops(heater)),
                f"{heater.name} is closed ({why_closed(heater)}) and has no control of expansion; that it "
                "fires only while water runs is no exemption here.",
                "Fit an expansion tank in its cold pipe, on the building's side of what closes it.",
            )
