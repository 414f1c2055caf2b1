"""Where codes differ the same layout comes out differently: one table, layout by layout and profile by profile.

The expectations were written down from the clauses before the program was asked.
"""

import re

import pytest
from conftest import system
from covering import findings_with_own_tests

import plumbnet
from plumbnet.layout.model.system import System
from plumbnet.rules.requirement import REQUIREMENTS
from plumbnet.rules.rule_profile import profile, profile_names
from plumbnet.rules.ruling import Ground

GENERAL, IPC, NPC, ONTARIO = "general", "ipc-2021", "npc-2020", "ontario-2024"
IRC21, IRC24 = "irc-2021", "irc-2024"
UPC18, UPC24 = "upc-2018", "upc-2024"
IRC, UPC, CANADA = (IRC21, IRC24), (UPC18, UPC24), (NPC, ONTARIO)
UK, EN, AS = "uk-2010", "en-806", "as-nzs-3500"
EN_HEATING, US_HEATING = "en-12828", "us-boiler"
HEATING = (EN_HEATING, US_HEATING)

RELIEF = "relief: {pressure: 130 psi, temperature: 210 degF}"
"""Below 10 bar, which some codes allow at most."""

LAYOUTS: dict[str, System] = {
    # street --|>-- tankless -- tap
    "tankless behind a check": system("street -> cv -> tankless -> tap.hot"),
    # street of 70 psi -- reducer with bypass, 50 psi -- heater -- tap
    "bypass, main above the set": system(
        "street -> prv -> heater -> tap.hot", street="pressure: 70 psi", prv="bypass: true"
    ),
    # street of 45 psi -- reducer with bypass, 50 psi -- heater -- tap
    "bypass, main below the set": system(
        "street -> prv -> heater -> tap.hot", street="pressure: 45 psi", prv="bypass: true"
    ),
    # street of 90 psi -- reducer with bypass, 50 psi -- heater, nobody draws
    "bypass, main of 90 psi": system(
        "street -> prv -> heater", street="pressure: 90 psi", prv="bypass: true", heater=RELIEF
    ),
    # street of 70 psi -- reducer, 50 psi -- tee with tank -- heater -- tap
    "reducer with its tank": system(
        "street -> prv -> tee -> heater -> tap.hot\ntee -> tank",
        street="pressure: 70 psi",
        tank="volume: 10 gal, precharge: 50 psi",
        heater=RELIEF,
    ),
    # street of 95 psi (655 kPa) -- tee with a hose bibb -- reducer, 50 psi -- tee with tank -- heater -- tap
    "hose bibb before the reducer": system(
        "street -> tee2 -> prv -> tee -> heater -> tap.hot\ntee -> tank\ntee2 -> tap2.cold",
        street="pressure: 95 psi",
        tank="volume: 10 gal, precharge: 50 psi",
        tap2="outdoor: true",
        heater=RELIEF,
    ),
    # street --|>-- tee with expansion relief -- heater -- tap
    "expansion relief at 75 psi": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> spill", spill="pressure: 75 psi", heater=RELIEF
    ),
    # street --|>-- tee with expansion relief -- heater, nobody draws
    "expansion relief at 700 kPa": system(
        "street -> cv -> tee -> heater\ntee -> spill", spill="pressure: 700 kPa", heater=RELIEF
    ),
    # street --|>-- heater -- tee with tank -- tap
    "tank on the hot side": system(
        "street -> cv -> heater -> tee -> tap.hot\ntee -> tank", tank="volume: 10 gal, precharge: 60 psi", heater=RELIEF
    ),
    # street --|>-- tee -- valve -- tank
    "valve before the tank": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> valve -> tank",
        tank="volume: 10 gal, precharge: 60 psi",
        heater=RELIEF,
    ),
    # street -- heater -- tap
    "no check at all": system("street -> heater -> tap.hot", heater=RELIEF),
    # street --|>-- tee with tank -- tee -- heater -- tap, and a cold tap at the second tee
    "meter check, taps behind it": system(
        "street -> cv -> tee -> tee2 -> heater -> tap.hot\ntee -> tank\ntee2 -> tap2.cold",
        tank="volume: 10 gal, precharge: 60 psi",
        heater=RELIEF,
    ),
    # as "no check at all", under 75 psi (517 kPa)
    "75 psi at the tap": system("street -> heater -> tap.hot", street="pressure: 75 psi", heater=RELIEF),
    # street --|>-- tee with tank -- heater -- tap; by Boyle's law 3.97 gal hold, the allowance of 4 % asks for 4.62
    "tank of 4.5 gal": system("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", heater=RELIEF),
    # street of 10 psi -- heater -- tap
    "10 psi at the tap": system("street -> heater -> tap.hot", street="pressure: 10 psi", heater=RELIEF),
    # a circuit of one height, filled to 4.2 psi (0.29 bar) and left open to no air
    "4.2 psi at the top": system(
        "street -> loop -> tee -> boiler -> pump -> emitter -> tee\ntee -> tank",
        loop="fill: 4.2 psi",
        tank="volume: 10 gal, precharge: 4.2 psi",
        boiler="relief: {pressure: 30 psi}",
    ),
    # street -- tee with tap, and from the tee through a double check and a reducer to the boiler's circuit
    "boiler filled through a double check": system(
        "street -> tee2 -> tap.cold\ntee2 -> cv -> prv -> tee\nboiler -> pump -> emitter -> tee -> boiler\ntee -> tank",
        cv="kind: double_check",
        prv="set: 12 psi",
        tank="volume: 10 gal, precharge: 12 psi",
        boiler="relief: {pressure: 30 psi}",
    ),
    # the same through two checks with a vent between, and glycol in the circuit
    "boiler with glycol behind a vented check": system(
        "street -> tee2 -> tap.cold\ntee2 -> cv -> prv -> tee\nboiler -> pump -> emitter -> tee -> boiler\ntee -> tank",
        cv="kind: vented_dual_check",
        prv="set: 12 psi",
        tank="volume: 10 gal, precharge: 12 psi",
        boiler="relief: {pressure: 30 psi}, antifreeze: {glycol: propylene, share: 0.3}",
    ),
    # relief valve of 175 psi (1,207 kPa) on a heater rated for 200
    "relief valve of 175 psi": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        tank="volume: 10 gal, precharge: 60 psi",
        heater="rating: 200 psi, relief: {pressure: 175 psi, temperature: 210 degF}",
    ),
    # street --|>-- tee with tank -- heater, whose relief valve is set 20 psi above the 60 that stand there
    "relief valve of 80 psi": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        tank="volume: 40 gal, precharge: 60 psi",
        heater="relief: {pressure: 80 psi, temperature: 210 degF}",
    ),
    # street --|>-- tee with tank -- heater in the attic -- tap
    "heater above the tap": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        tank="volume: 10 gal, precharge: 60 psi",
        heater=f"elevation: 10 ft, {RELIEF}",
    ),
    # the same on one floor, its cold water let in at the bottom
    "heater fed from below": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        tank="volume: 10 gal, precharge: 60 psi",
        heater=f"fed_from_below: true, {RELIEF}",
    ),
    # an electric heater at 50 degC
    "stored at 50 degC": system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank",
        tank="volume: 10 gal, precharge: 60 psi",
        heater=f"setpoint: 50 degC, electric: true, {RELIEF}",
    ),
}

EXPECTED: dict[str, dict[str, tuple[str, ...]]] = {
    "closed-without-control": {"tankless behind a check": (*UPC, *CANADA, *HEATING)},
    "bypass-does-not-count": {
        "bypass, main above the set": (IPC, *IRC, *UPC, *CANADA, EN, AS, *HEATING),
        "bypass, main below the set": (IPC, IRC24, *UPC, *CANADA, EN, AS, *HEATING),
        "bypass, main of 90 psi": (IPC, *IRC, *CANADA, EN, AS, *HEATING),
    },
    "reducer-without-tank": {"bypass, main of 90 psi": UPC},
    "expansion-relief-does-not-count": {
        "expansion relief at 75 psi": (*UPC, UK, *HEATING),
        "expansion relief at 700 kPa": (*UPC, *CANADA, UK, *HEATING),
    },
    "tank-on-hot-side": {"tank on the hot side": (GENERAL, IPC, IRC24, UK, EN, AS)},
    "valve-before-tank": {"valve before the tank": (UK, EN, AS, *HEATING)},
    "control-upstream-of-valve": {"valve before the tank": (*UPC, ONTARIO)},
    "growth-leaves-supply-pipe": {
        "bypass, main above the set": (UK,),
        "bypass, main below the set": (UK,),
        "bypass, main of 90 psi": (UK,),
        "no check at all": (UK,),
        "75 psi at the tap": (UK,),
        "10 psi at the tap": (UK,),
    },
    "check-missing-at-heater": {
        "bypass, main above the set": (EN, AS),
        "bypass, main below the set": (EN, AS),
        "bypass, main of 90 psi": (EN, AS),
        "reducer with its tank": (UK, EN, AS),
        "hose bibb before the reducer": (UK, EN, AS),
        "meter check, taps behind it": (UK, EN, AS),
        "no check at all": (EN, AS),
        "75 psi at the tap": (EN, AS),
        "10 psi at the tap": (EN, AS),
    },
    "tap-below-least": {"10 psi at the tap": (*UPC, EN)},
    "circuit-top-below-least": {"4.2 psi at the top": (EN_HEATING,)},
    "static-above-limit": {"75 psi at the tap": (EN, AS), "hose bibb before the reducer": (*IRC, *UPC, *CANADA, AS)},
    "tank-below-method": {"tank of 4.5 gal": (UK,)},
    "fill-without-preventer": {
        "boiler filled through a double check": (IPC, *IRC, UK, EN, EN_HEATING),
        "boiler with glycol behind a vented check": (GENERAL, IPC, *IRC, *UPC, *CANADA, AS, US_HEATING),
    },
    "relief-little-above-supply": {"relief valve of 80 psi": IRC},
    "vacuum-relief-missing": {"heater above the tap": (IPC, *UPC), "heater fed from below": (IPC, *IRC, NPC)},
    "stored-too-cool": {"stored at 50 degC": (*CANADA, UK, AS)},
    "relief-set-too-high": {"relief valve of 175 psi": (GENERAL, IPC, *IRC, *UPC, *CANADA, UK, EN, *HEATING)},
}
"""For each finding and layout the profiles under which it stands; under all others it does not.

A profile that is named nowhere judges as the one that it extends.
"""
NAMED = {rules for stands in EXPECTED.values() for named in stands.values() for rules in named}


def judge(rules: str) -> str:
    """The profile named in the table as which another judges: itself, or what it extends."""
    extends = profile(rules).extends
    return rules if rules in NAMED or extends is None else judge(extends)


@pytest.mark.parametrize("rules", profile_names())
@pytest.mark.parametrize("layout", LAYOUTS)
def test_layout_comes_out_as_the_code_has_it(layout: str, rules: str) -> None:
    found = {one.name for one in plumbnet.check(LAYOUTS[layout], rules=rules).findings}
    expected = {name for name, stands in EXPECTED.items() if judge(rules) in stands.get(layout, ())}
    assert found & EXPECTED.keys() == expected


def test_every_finding_that_rests_on_a_value_stands_in_the_table_or_has_tests_of_its_own() -> None:
    assert {name for name, rule in REQUIREMENTS.items() if rule.rests_on} <= EXPECTED.keys() | findings_with_own_tests()


def test_verdict_is_physics_and_no_code_changes_it_but_by_its_limit() -> None:
    for layout in ("no check at all", "tankless behind a check", "bypass, main below the set"):
        verdicts = {
            tuple(heater.verdict for heater in plumbnet.check(LAYOUTS[layout], rules=rules).heaters)
            for rules in profile_names()
        }
        assert len(verdicts) == 1, layout


def clauses(rules: str) -> dict[str, str]:
    chosen = profile(rules)
    return {name: ruling.clause for name, ruling in {**chosen.rulings(), **chosen.findings, **chosen.site}.items()}


LATER_IPC = {name for name in profile_names() if profile(name).extends == IPC} - {IRC21}


@pytest.mark.parametrize("rules", sorted({*profile_names()} - {GENERAL, IPC} - LATER_IPC))
def test_code_takes_from_other_codes_nothing_but_common_practice(rules: str) -> None:
    foreign = {*clauses(GENERAL).values(), *clauses(IPC).values()}
    kept = {clause for clause in clauses(rules).values() if not clause.startswith("common practice")}
    assert not kept & foreign


@pytest.mark.parametrize("rules", sorted({IPC, *LATER_IPC}))
def test_plumbing_code_takes_from_general_practice_nothing_but_common_practice(rules: str) -> None:
    kept = {clause for clause in clauses(rules).values() if not clause.startswith("common practice")}
    assert not kept & set(clauses(GENERAL).values())


@pytest.mark.parametrize("rules", profile_names())
def test_practice_is_never_said_to_have_been_read(rules: str) -> None:
    chosen = profile(rules)
    assert not [one.clause for one in chosen.clauses() if one.ground is Ground.PRACTICE and one.verified]


def test_standard_of_which_nothing_was_read_counts_nothing_read() -> None:
    assert [one for one in profile(EN_HEATING).clauses() if one.ground is Ground.READ] == []


@pytest.mark.parametrize("rules", ["ipc-2024", "irc-2024", "upc-2021", "npc-2025"])
def test_edition_of_which_no_word_was_read_says_so(rules: str) -> None:
    assert profile(rules).note.startswith(f"No word of the {rules[-4:]} edition was read")


@pytest.mark.parametrize("rules", profile_names())
def test_number_of_a_uk_paragraph_that_nobody_read_is_not_given(rules: str) -> None:
    assert not any(re.search(r"paragraphs? (1[6-9]|2[1-3])\b", clause) for clause in clauses(rules).values())


def test_rules_for_potable_heaters_are_not_cited_for_heating_circuits() -> None:
    cited = " ".join(clauses(US_HEATING).values())
    assert "0412(b)" not in cited
    assert "890.1130" not in cited
