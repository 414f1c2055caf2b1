"""Rule profiles: data with a clause behind every value."""

import hashlib
from importlib.resources import files
from pathlib import Path

import pytest

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.requirement import REQUIREMENTS, ruling_of
from plumbnet.rules.rule_profile import GENERAL, UnknownProfile, profile, profile_at, profile_names, read_profile

TEXT = (files("plumbnet") / "data" / "profiles" / "general.yaml").read_text(encoding="utf-8")
LINES = TEXT.splitlines()
SHARE = LINES.index("relief_share:") + 1
"""The line in which the share of the relief valve's set begins."""


def fault(text: str) -> str:
    with pytest.raises(LayoutError) as caught:
        read_profile(text.encode(), file="small.yaml")
    return str(caught.value)


def test_general_practice_is_there() -> None:
    assert GENERAL in profile_names()
    assert list(profile_names()) == sorted(profile_names())


@pytest.mark.parametrize("name", profile_names())
def test_profile_is_complete(name: str) -> None:
    chosen = profile(name)
    assert chosen.profile == name
    assert chosen.title
    assert set(chosen.findings) <= set(REQUIREMENTS)
    assert all(ruling_of(rule, chosen).clause for rule in REQUIREMENTS.values())
    assert all(ruling.clause for ruling in chosen.findings.values())
    assert 0 < chosen.relief_share.value <= 1
    assert 300_000 < chosen.distribution_limit.value_pa < 1_200_000
    assert chosen.charge_tolerance.value_pa > 0


def test_general_practice_limits_what_people_draw_to_80_psi() -> None:
    assert profile(GENERAL).distribution_limit.value_pa == pytest.approx(551_580.6, rel=1e-6)
    assert profile(GENERAL).relief_share.value == pytest.approx(0.9)


def test_unknown_profile_is_told_with_the_nearest_or_all() -> None:
    with pytest.raises(UnknownProfile, match=r'^no rule profile is called "genral": did you mean "general"\?$'):
        profile("genral")
    with pytest.raises(UnknownProfile, match=r'^no rule profile is called "\.\./x"; there is .*general'):
        profile("../x")
    with pytest.raises(UnknownProfile) as caught:
        profile("../x")
    assert str(caught.value).endswith("; there is as-nzs-3500, " + ", ".join(profile_names()[1:]))


def test_values_are_read_in_their_units_and_bare_ones_in_us() -> None:
    metric = read_profile(TEXT.replace("80 psi\n", "500 kPa\n").encode(), file="small.yaml")
    bare = read_profile(TEXT.replace("80 psi\n", "80\n").encode(), file="small.yaml")
    assert metric.distribution_limit.value_pa == 500_000
    assert bare.model_dump() == profile(GENERAL).model_dump()


def test_value_without_a_clause_is_a_fault_of_our_own_data() -> None:
    without = [*LINES[: SHARE + 1], *LINES[SHARE + 2 :]]
    assert LINES[SHARE + 1].startswith("  clause: ")
    assert fault("\n".join(without)) == (
        f'small.yaml:{SHARE}:1: a ruling needs "clause"\n  {SHARE} | relief_share:\n'
        f"{' ' * len(str(SHARE))}   | ^~~~~~~~~~~~"
    )


def test_wrong_value_is_shown_under_its_line() -> None:
    assert LINES[SHARE] == "  value: 90 %"
    said = fault(TEXT.replace("  value: 90 %", "  value: 90"))
    assert said.splitlines()[0] == f'small.yaml:{SHARE + 1}:10: value: "90" is too high; a fraction is at most 100 %'


def test_file_that_is_no_profile_is_refused() -> None:
    assert fault("").startswith("small.yaml: there is nothing in this file")
    with pytest.raises(LayoutError) as caught:
        read_profile(b"\xff", file="small.yaml")
    assert str(caught.value) == ("small.yaml:1:1: the byte 0xFF is not UTF-8; save the file in the encoding UTF-8")
    assert 'a rule profile has no field "limit"' in fault(f"limit: 3\n{TEXT}")


def without(name: str) -> str:
    """General practice less the clause of one finding."""
    at = LINES.index(f"  {name}:")
    return "\n".join([*LINES[:at], *LINES[at + 3 :]])


def test_profile_without_a_clause_for_a_finding_is_refused_and_told_how_to_say_it() -> None:
    line = LINES.index("findings:") + 1
    assert fault(without("tank-waterlogged")) == (
        f"small.yaml:{line}:1: a rule profile needs a clause for each finding, and has none for tank-waterlogged; "
        'write tank-waterlogged: {clause: "common practice", verified: false}, '
        "or extends: general to take over what is left out\n"
        f"  {line} | findings:\n{' ' * len(str(line))}   | ^~~~~~~~"
    )


def test_profile_with_no_clause_for_any_finding_is_told_all_in_one_sentence() -> None:
    said = fault(f"{TEXT.partition('findings:')[0]}findings: {{}}\n")
    assert said.count("small.yaml:") == 1
    assert all(f" {name}" in said for name, rule in REQUIREMENTS.items() if not (rule.rests_on or rule.practice))
    assert not any(f" {name}" in said for name, rule in REQUIREMENTS.items() if rule.rests_on or rule.practice)


def test_finding_needs_a_clause_of_its_own_where_the_value_is_left_out_that_it_rests_on() -> None:
    start = LINES.index("relief_set:")
    text = "\n".join([*LINES[:start], *LINES[start + 4 :]])
    assert "a clause for each finding, and has none for relief-set-too-high; write" in fault(text)
    clause = '  relief-set-too-high: {clause: "ours", verified: true}'
    assert read_profile(f"{text}\n{clause}\n".encode(), file="small.yaml").relief_set is None


def test_finding_that_there_is_not_is_told_with_the_nearest_or_where_they_are_listed() -> None:
    line = LINES.index("  tank-waterlogged:") + 1
    assert fault(TEXT.replace("  tank-waterlogged:", "  tank-waterloged:")) == (
        f'small.yaml:{line}:3: no finding is called "tank-waterloged": did you mean "tank-waterlogged"?\n'
        f"  {line} |   tank-waterloged:\n{' ' * len(str(line))}   |   ^~~~~~~~~~~~~~~"
    )
    spaceship = fault(f"{OWN}findings: {{spaceship: {{clause: ours, verified: true}}}}\n")
    assert spaceship.splitlines()[0] == (
        'small.yaml:5:12: no finding is called "spaceship"; the command plumbnet rules --findings lists them all'
    )


def test_misspelt_keys_are_told_all_at_once_wherever_they_stand() -> None:
    slips = OWN.replace("relief_share:", "relief_shar:").replace("value:", "valu:") + (
        "note: x\nnot: y\nfindings:\n  tank-cut-of: {clause: ours, verified: true}\n"
        "  tank-cut-off: {severit: note, clause: ours, verified: true}\n"
        "sizing: {method: membrane, clause: ours, verified: true}\n"
    )
    assert [line for line in fault(slips).splitlines() if line.startswith("small.yaml")] == [
        'small.yaml:4:1: a rule profile has no field "relief_shar": did you mean "relief_share"?',
        'small.yaml:6:1: a rule profile has no field "not": did you mean "note"?',
        'small.yaml:8:3: no finding is called "tank-cut-of": did you mean "tank-cut-off"?',
        'small.yaml:9:18: a ruling has no field "severit": did you mean "severity"?',
        'small.yaml:10:1: a ruling needs "value"; for example value: membrane',
        'small.yaml:10:10: a ruling has no field "method"; its fields are clause, verified, value',
    ]


OWN = "profile: ours\ntitle: Ours\nextends: upc-2024\nrelief_share: {value: 85 %, clause: ours, verified: true}\n"


def test_profile_that_extends_another_takes_what_it_does_not_write() -> None:
    own, base = read_profile(OWN.encode(), file="ours.yaml"), profile("upc-2024")
    assert (own.relief_share.value, base.relief_share.value) == pytest.approx((0.85, 0.9))
    assert own.tank_behind_reducer == base.tank_behind_reducer
    assert own.findings == base.findings
    assert own.note == ""
    graded = OWN + "findings: {tank-waterlogged: {severity: note, clause: ours, verified: true}}\n"
    more = read_profile(graded.encode(), file="ours.yaml")
    assert more.findings == {**base.findings, "tank-waterlogged": more.findings["tank-waterlogged"]}


SITE = (
    "site:\n  pan: not-asked\n  straps: {asks: two straps, clause: ours, verified: true}\n"
    "  lamp: {asks: a lamp above the heater, clause: ours, verified: true}\n"
)


def test_what_is_seen_on_site_is_taken_over_by_name_and_may_be_called_not_asked() -> None:
    base, own = profile("upc-2024").site, read_profile((OWN + SITE).encode(), file="ours.yaml").site
    assert {"pan", "straps"} <= set(base)
    assert set(own) == {*base, "lamp"} - {"pan"}
    assert own["straps"].asks == "two straps"
    assert own["discharge-pipe"] == base["discharge-pipe"]


def test_faulty_entry_of_what_is_seen_on_site_is_told_in_its_place() -> None:
    slips = SITE.replace("two straps", '""').replace("pan: not-asked", "pan: never").replace("{asks: a", "{ask: a")
    assert [line for line in fault(OWN + slips).splitlines() if line.startswith("small.yaml")] == [
        'small.yaml:6:8: pan: a mapping is wanted here, not "never"',
        'small.yaml:7:18: asks: "" cannot be used here',
        'small.yaml:8:10: a ruling has no field "ask": did you mean "asks"?',
    ]


def test_hash_is_that_of_the_file_and_of_all_it_extends() -> None:
    alone = read_profile(TEXT.encode(), file="general.yaml")
    assert alone.sha256 == hashlib.sha256(TEXT.encode()).hexdigest() == profile(GENERAL).sha256
    own = hashlib.sha256(OWN.encode()).hexdigest()
    both = hashlib.sha256((own + profile("upc-2024").sha256).encode()).hexdigest()
    assert read_profile(OWN.encode(), file="ours.yaml").sha256 == both
    assert len({profile(name).sha256 for name in profile_names()}) == len(profile_names())


def test_unknown_base_is_told_with_its_place() -> None:
    assert fault(OWN.replace("upc-2024", "upc-2025")).splitlines()[0] == (
        'small.yaml:3:10: no rule profile is called "upc-2025": did you mean "upc-2024"?'
    )
    assert fault(OWN.replace("upc-2024", "upc-2025")).splitlines()[2] == "    |          ^~~~~~~~"
    assert fault("profile: [a]\nextends: 3\n").startswith("small.yaml:")


def test_margin_counts_where_it_lies_lower_than_the_share() -> None:
    heating = profile("en-12828")
    assert heating.highest_below_relief_pa(3.0e5) == pytest.approx(2.5e5)
    assert heating.highest_below_relief_pa(5.0e5) == pytest.approx(4.5e5)
    assert heating.highest_below_relief_pa(10.0e5) == pytest.approx(9.0e5)
    assert heating.highest_below_relief_pa(0.3e5) == 0.0
    assert profile(GENERAL).highest_below_relief_pa(10.0e5) == pytest.approx(9.0e5)


def test_profile_comes_by_name_or_from_a_file(tmp_path: Path) -> None:
    path = tmp_path / "ours.yaml"
    path.write_text(OWN, encoding="utf-8")
    assert profile_at(str(path)).title == "Ours"
    assert profile_at("upc-2024") is profile("upc-2024")
    with pytest.raises(OSError, match="none"):
        profile_at(str(tmp_path / "none"))
    with pytest.raises(UnknownProfile):
        profile_at("ours")
    with pytest.raises(OSError, match="ours"):
        profile_at("codes\\ours")
