"""Which places a heater brings above their limits, and which it does not."""

import pytest
from conftest import PSI, Drawn, drawn

from plumbnet.analysis.equilibrium.limit_breaches import broken_places
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.rules.rule_profile import profile

ONE = "street -> cv -> tee -> heater -> tap.hot"
ROW = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap2.hot\ntee1 -> tank1\ntee2 -> tank2"
LARGE = "volume: 80 gal"


def broken(layout: Drawn, heater: str = "heater") -> list[tuple[str, float]]:
    """What sets the limit of each place that a heater brings too high, and that limit in psi at datum."""
    judge = judge_of(layout.network, profile("general"))
    heated = next(one for one in layout.network.heated if one.name == heater)
    near = judge.neighbourhoods.of(layout.zone(heater))
    found = list(broken_places(judge.limits, near, heater, heated.inlet))
    for one in found:
        assert near.highest(one.zone).pressure_pa > one.limit.pressure_pa
    return [(one.limit.part, round(one.limit.pressure_pa / PSI, 3)) for one in found]


def test_heater_without_room_brings_its_own_zone_too_high() -> None:
    assert broken(drawn(ONE)) == [("tap", 80.0)]
    assert broken(drawn("street -> cv -> tee -> heater", tee="rating: 300 psi")) == [("tee", 300.0)]


def test_heater_with_room_brings_nothing_too_high() -> None:
    assert broken(drawn(f"{ONE}\ntee -> tank", tank=LARGE)) == []


def test_heater_on_the_open_street_brings_nothing_too_high() -> None:
    assert broken(drawn("street -> heater -> tap.hot", street="pressure: 75 psi")) == []


@pytest.mark.parametrize(("set_psi", "places"), [(80.0, 0), (80.00010, 0), (80.00020, 1)])
def test_limit_is_passed_by_more_than_a_pascal(set_psi: float, places: int) -> None:
    # an expansion relief valve ends the climb there: 0.0001 psi is 0.69 Pa, 0.0002 is 1.38
    assert len(broken(drawn(f"{ONE}\ntee -> spill", spill=f"pressure: {set_psi} psi"))) == places


def test_heater_helps_to_bring_a_place_beyond_a_check_too_high() -> None:
    # 10 gal hold the upper, 5 gal the lower alone (75 psi), but not after what comes from above
    layout = drawn(ROW, tank1="volume: 10 gal", tank2="volume: 5 gal")
    assert broken(layout, "heater1") == broken(layout, "heater2") == [("tap2", 80.0)]


def test_heater_that_cannot_open_the_check_brings_nothing_beyond_too_high() -> None:
    # 2 gal are too little for heater2 alone; heater1 with 80 gal comes to 61 psi and the check needs 20 more
    layout = drawn(ROW, tank1=LARGE, tank2="volume: 2 gal", cv2="opens: 20 psi")
    assert broken(layout, "heater1") == []
    assert broken(layout, "heater2") == [("tap2", 80.0)]


def test_heater_does_not_answer_for_what_lies_before_its_check() -> None:
    layout = drawn(ROW + "\ntee1 -> tap1.cold", tank1="volume: 1 gal", tank2="volume: 1 gal")
    assert broken(layout, "heater1") == [("tap1", 80.0), ("tap2", 80.0)]
    assert broken(layout, "heater2") == [("tap2", 80.0)]


def test_place_that_each_of_two_brings_to_no_end_is_brought_there_by_both() -> None:
    layout = drawn("street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap2.hot")
    assert broken(layout, "heater1") == broken(layout, "heater2") == [("tap2", 80.0)]


def test_limit_beyond_a_check_is_that_of_the_place_beyond() -> None:
    # nothing in the heater's own zone sets a limit; it is not held to that of the tap where it stands itself
    layout = drawn("street -> cv -> tee -> heater -> cv2 -> tap.hot", cv2="opens: 5 psi")
    assert broken(layout) == [("tap", 80.0)]


def test_where_nothing_in_reach_sets_a_limit_that_of_the_profile_counts_for_the_heater() -> None:
    assert broken(drawn("street -> cv -> tee -> heater -> cv2 -> tee2")) == [("", 80.0)]
    assert broken(drawn("street -> cv -> tee -> heater -> cv2 -> tee2\ntee -> tank", tank=LARGE)) == []


def test_limit_of_the_profile_counts_at_the_height_of_the_heater() -> None:
    layout = drawn("street -> cv -> heater", heater="elevation: 10 m")
    assert broken(layout) == [("", round(80 + 10 * 9806.65 / PSI, 3))]


def test_pressure_that_passes_a_limit_by_one_pascal_does_not_break_it() -> None:
    for above_pa, places in ((1, 0), (2, 1)):
        layout = drawn(
            "street -> cv -> tee -> heater\ntee -> spill",
            street="pressure: 400000 Pa",
            tee="rating: 500000 Pa",
            spill=f"pressure: {500000 + above_pa} Pa",
        )
        assert len(broken(layout)) == places
