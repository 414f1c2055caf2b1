"""A town changes one value: whoever reads a finding that rests on it finds the town's clause there."""

from typing import NamedTuple

import pytest
from conftest import system

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.system import System
from plumbnet.rules.example_layouts import CIRCUIT, CLOSED_HOUSE, LETOFF_HOUSE, PLAIN_HOUSE, TANK_HOUSE
from plumbnet.rules.finding import Finding
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import Profile, profile, read_profile

ORDINANCE = "Town ordinance 12-3"


PLAIN_TANKLESS = (
    "plumbnet: 1\nparts:\n  street: {kind: main, pressure: 60 psi}\n"
    "  tankless: {kind: tankless_heater, setpoint: 120 degF}\n"
    "  tap: fixture\nruns:\n  - street -> tankless -> tap.hot\n"
)


class Case(NamedTuple):
    """What a town writes of a value, a layout that breaks it, and the findings that rest on it there."""

    written: str
    layout: str
    findings: tuple[str, ...]


CASES = {
    "distribution_limit": Case("value: 70 psi", CLOSED_HOUSE, ("trapped-expansion",)),
    "static_limit": Case("value: 50 psi", PLAIN_HOUSE, ("static-above-limit",)),
    "outdoor_taps": Case(
        "value: held",
        PLAIN_HOUSE.altered("\n  street: {kind: main, pressure: 95 psi}\n  tap: {kind: fixture, outdoor: true}\n"),
        ("static-above-limit",),
    ),
    "least_at_tap": Case("value: 70 psi", PLAIN_HOUSE, ("tap-below-least",)),
    "least_at_top": Case("value: 30 psi", CIRCUIT, ("circuit-top-below-least",)),
    "relief_share": Case("value: 30 %", PLAIN_HOUSE, ("relief-near-static",)),
    "relief_margin": Case("value: 100 psi", PLAIN_HOUSE, ("relief-near-static",)),
    "relief_temperature": Case("value: 200 degF", PLAIN_HOUSE, ("relief-opens-hot",)),
    "relief_for": Case("value: every", PLAIN_TANKLESS, ("relief-missing",)),
    "relief_set": Case("value: 100 psi", PLAIN_HOUSE, ("relief-set-too-high",)),
    "charge_tolerance": Case(
        "value: 0.5 psi", TANK_HOUSE.replace("precharge: 60 psi", "precharge: 59 psi"), ("tank-charge-differs",)
    ),
    "control_for": Case("value: every", REQUIREMENTS["closed-without-control"].bad, ("closed-without-control",)),
    "bypass": Case("value: does-not-count", REQUIREMENTS["bypass-does-not-count"].bad, ("bypass-does-not-count",)),
    "tank_behind_reducer": Case("value: asked", REQUIREMENTS["reducer-without-tank"].bad, ("reducer-without-tank",)),
    "expansion_relief": Case("value: does-not-count", LETOFF_HOUSE, ("expansion-relief-does-not-count",)),
    "control_side": Case("value: cold", REQUIREMENTS["tank-on-hot-side"].bad, ("tank-on-hot-side",)),
    "valve_before_tank": Case("value: asked", REQUIREMENTS["valve-before-tank"].bad, ("valve-before-tank",)),
    "check_at_heater": Case("value: asked", PLAIN_HOUSE, ("check-missing-at-heater",)),
    "temperature_relief": Case(
        "value: asked", REQUIREMENTS["temperature-relief-missing"].bad, ("temperature-relief-missing",)
    ),
    "valve_at_heater": Case(
        "value: asked", REQUIREMENTS["control-upstream-of-valve"].bad, ("control-upstream-of-valve",)
    ),
    "fill_preventer": Case(
        "value: [reduced pressure]",
        REQUIREMENTS["fill-without-preventer"].bad.replace("check_valve", "double_check"),
        ("fill-without-preventer",),
    ),
    "way_back": Case(
        "value: supply-pipe", REQUIREMENTS["growth-leaves-supply-pipe"].bad, ("growth-leaves-supply-pipe",)
    ),
    "relief_above_static": Case(
        "value: 25 psi", REQUIREMENTS["relief-little-above-supply"].bad, ("relief-little-above-supply",)
    ),
    "least_stored": Case("value: 60 degC", REQUIREMENTS["stored-too-cool"].bad, ("stored-too-cool",)),
    "vacuum_relief": Case("value: both", REQUIREMENTS["vacuum-relief-missing"].bad, ("vacuum-relief-missing",)),
    "tank_service": Case("value: asked", REQUIREMENTS["tank-cannot-be-served"].bad, ("tank-cannot-be-served",)),
    "sizing": Case("value: asme-iv", REQUIREMENTS["tank-below-method"].bad, ("tank-below-method",)),
}


def town(name: str, written: str, extends: str = "general") -> Profile:
    text = (
        f"profile: town\ntitle: Town\nextends: {extends}\n{name}: {{{written}, clause: {ORDINANCE}, verified: true}}\n"
    )
    return read_profile(text.encode(), file="town.yaml")


def read(text: str) -> System:
    return read_system(text.encode(), file="house.yaml")


def quoting(layout: System, rules: Profile) -> tuple[str, ...]:
    """The findings that quote the town."""
    return tuple(sorted({one.name for one in plumbnet.check(layout, rules=rules).findings if ORDINANCE in one.clause}))


def found(layout: System, rules: Profile, name: str) -> Finding:
    return next(one for one in plumbnet.check(layout, rules=rules).findings if one.name == name)


def test_every_value_of_a_profile_has_a_case() -> None:
    fields = Profile.model_fields
    assert set(CASES) == {name for name, info in fields.items() if "Ruling" in str(info.annotation)} - {
        "findings",
        "site",
        "gauge_pressure",  # what margins are compared with; no finding rests on them
        "gauge_temperature",
    }


@pytest.mark.parametrize("name", CASES)
def test_value_that_a_town_changes_brings_its_clause_into_the_findings_that_rest_on_it(name: str) -> None:
    case = CASES[name]
    assert quoting(read(case.layout), town(name, case.written)) == case.findings


def test_limit_that_a_town_lowers_is_quoted_before_the_clause_that_asks_for_it() -> None:
    lowered = town("distribution_limit", "value: 70 psi", "ipc-2021")
    high = read(PLAIN_HOUSE.replace("60 psi", "75 psi"))
    one = found(high, lowered, "static-above-limit")
    assert one.clause == f"{ORDINANCE}; {profile('ipc-2021').findings['static-above-limit'].clause}"
    assert "the limit is 70 psi" in one.text
    small = system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        tank="volume: 0.5 gal, precharge: 60 psi",
        heater="relief: {pressure: 150 psi}",
    )
    assert quoting(small, lowered) == ("tank-too-small",)
    assert quoting(small, profile("ipc-2021")) == ()


def test_value_is_not_quoted_where_another_one_decides() -> None:
    lowered = town("distribution_limit", "value: 70 psi")
    # nobody draws: the relief valve's set decides, and its share is quoted
    closed = system("street -> cv -> heater", heater="relief: {pressure: 100 psi}")
    assert quoting(closed, lowered) == ()
    assert quoting(closed, town("relief_share", "value: 80 %")) == ("trapped-expansion",)
    # a part's rating decides
    weak = system("street -> cv -> heater -> tap.hot", heater="rating: 65 psi, relief: {pressure: 150 psi}")
    assert quoting(weak, lowered) == ()
    # the static limit of EN 806 is its own, and stays as it is
    metric = town("distribution_limit", "value: 9 bar", "en-806")
    high = system("street -> heater -> tap.hot", street="pressure: 6 bar", heater="relief: {pressure: 150 psi}")
    assert "static-above-limit" in [one.name for one in plumbnet.check(high, rules=metric).findings]
    assert "static-above-limit" not in quoting(high, metric)


def test_margin_or_share_is_quoted_whichever_keeps_further_below_the_set() -> None:
    near = system("street -> heater -> tap.hot", heater="relief: {pressure: 64 psi}")
    assert quoting(near, town("relief_share", "value: 80 %", "en-12828")) == ("relief-near-static",)
    assert quoting(near, town("relief_share", "value: 90 %", "en-12828")) == ()


def test_place_beyond_a_check_that_a_heater_brings_too_high_quotes_what_decides_there() -> None:
    # street - heater with a tank - mixer with checks - tap, and the tank is too small for 70 psi at the tap
    runs = "street -> cv1 -> tee -> heater -> cv2 -> tap.hot\ntee -> tank"
    layout = system(
        runs, tank="volume: 3 gal, precharge: 60 psi", heater="relief: {pressure: 150 psi, temperature: 210 degF}"
    )
    lowered = town("distribution_limit", "value: 70 psi")
    assert [(one.name, one.clause.startswith(ORDINANCE)) for one in plumbnet.check(layout, rules=lowered).findings] == [
        ("tank-too-small", True),
        ("check-on-hot-side", False),
    ]


def test_pumped_up_place_quotes_what_bounds_it() -> None:
    bad = read(REQUIREMENTS["pumped-up"].bad)
    assert quoting(bad, town("distribution_limit", "value: 551 kPa")) == ("pumped-up",)


def test_finding_that_a_town_words_itself_is_not_quoted_twice() -> None:
    text = (
        f"profile: town\ntitle: Town\nextends: general\n"
        f"relief_set: {{value: 100 psi, clause: {ORDINANCE}, verified: true}}\n"
        f"findings: {{static-above-limit: {{clause: ours, verified: true}}}}\n"
        f"distribution_limit: {{value: 50 psi, clause: {ORDINANCE} a, verified: true}}\n"
    )
    ours = read_profile(text.encode(), file="town.yaml")
    assert found(read(PLAIN_HOUSE), ours, "relief-set-too-high").clause == ORDINANCE
    assert found(read(PLAIN_HOUSE), ours, "static-above-limit").clause == "ours"


def test_profile_knows_how_deep_each_of_its_values_lies() -> None:
    county = town("distribution_limit", "value: 70 psi")
    assert county.source.depth_of("distribution_limit") == 0
    assert county.source.depth_of("bypass") == county.source.deepest == 1
    assert county.source.depth_of_finding("tank-cut-off") == 1


def test_recalled_clause_leaves_the_finding_to_be_looked_up() -> None:
    limit = f"static_limit: {{value: 50 psi, clause: {ORDINANCE}, verified: false}}"
    recalled = read_profile(f"profile: town\ntitle: Town\nextends: general\n{limit}\n".encode(), file="town.yaml")
    one = found(read(PLAIN_HOUSE), recalled, "static-above-limit")
    assert (one.verified, one.is_certain) == (False, False)
