"""The tanks that are there: charged right, exchanged, enlarged; and not where that is not enough or not needed."""

import pytest
from conftest import PSI
from curing import RELIEVED, TANKED, cure, cured, efforts, house, scene

from plumbnet.layout.edits.change_text import change_fields
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy_types.tank_cures import cushion_of, wanted_charge_pa

WELL = """well -> tee -> heater -> tap.hot
          tee -> tank"""


def written(layout_fields: str, effort: Effort) -> list[dict[str, object]]:
    return [change_fields(one) for one in cure(house(TANKED, tank=layout_fields), effort).changes]


def test_tank_charged_wrong_is_charged_to_the_line_and_not_exchanged() -> None:
    layout = house(TANKED, tank="precharge: 30 psi, volume: 5 gal")
    assert Effort.ENLARGE not in efforts(layout)
    remedy = cure(layout, Effort.RECHARGE)
    assert [change_fields(one) for one in remedy.changes] == [{"set": {"part": "tank", "precharge": "60 psi"}}]
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED
    assert cured(layout, remedy).settled_pa == remedy.settled_pa


def test_tank_is_charged_to_the_pressure_at_its_own_height() -> None:
    fields = "precharge: 60 psi, volume: 15 gal, elevation: 40 ft"
    remedy = cure(house(TANKED, tank=f"{fields}"), Effort.RECHARGE)
    assert "42.7 psi" in remedy.title


def test_charge_alone_does_not_cure_a_tank_that_is_too_small() -> None:
    layout = house(TANKED, tank="precharge: 30 psi, volume: 2 gal")
    assert Effort.RECHARGE not in efforts(layout)
    assert Effort.ENLARGE in efforts(layout)


def test_several_tanks_are_charged_together_where_one_is_not_enough() -> None:
    layout = house(
        f"{TANKED}\n tee -> tank2",
        tank="precharge: 20 psi, volume: 2.5 gal",
        tank2="precharge: 20 psi, volume: 2.5 gal",
    )
    assert len(cure(layout, Effort.RECHARGE).changes) == 2


def test_small_tank_is_exchanged_for_the_next_size_that_does() -> None:
    assert written("volume: 2 gal", Effort.ENLARGE) == [
        {"set": {"part": "tank", "precharge": "60 psi", "volume": "5 gal"}}
    ]


def test_membrane_of_a_larger_tank_lets_in_a_like_share() -> None:
    layout = house(TANKED, tank="volume: 5 gal, acceptance: 0.5 gal")
    after = cured(layout, cure(layout, Effort.ENLARGE))
    assert after.verdict is Verdict.CONTROLLED
    (change,) = cure(layout, Effort.ENLARGE).changes
    assert change_fields(change)["set"] == {
        "part": "tank",
        "precharge": "60 psi",
        "volume": "10 gal",
        "acceptance": "1 gal",
    }


def test_waterlogged_tank_is_exchanged_for_a_sound_one() -> None:
    assert written("volume: 5 gal, state: waterlogged", Effort.EXCHANGE_TANK) == [
        {"set": {"part": "tank", "precharge": "60 psi", "state": "sound"}}
    ]


def test_waterlogged_tank_that_was_too_small_is_exchanged_for_a_larger_one() -> None:
    assert written("volume: 1 gal, state: waterlogged", Effort.EXCHANGE_TANK) == [
        {"set": {"part": "tank", "precharge": "60 psi", "state": "sound", "volume": "5 gal"}}
    ]


def test_waterlogged_tank_beside_a_sound_one_is_exchanged_though_the_heater_is_controlled() -> None:
    layout = house(f"{TANKED}\n tee -> tank2", tank2="state: waterlogged")
    assert efforts(layout) == [Effort.EXCHANGE_TANK]


def test_tank_that_no_heated_water_reaches_is_not_charged() -> None:
    layout = house("street -> tee -> cv -> heater -> tap.hot\n tee -> tank", tank="precharge: 30 psi")
    assert Effort.RECHARGE not in efforts(layout)


def test_tank_of_a_well_is_charged_below_the_cut_in() -> None:
    tank = scene(house(WELL, heater=RELIEVED)).tanks["tank"]
    assert wanted_charge_pa(tank) == pytest.approx(28 * PSI)


def test_part_that_is_no_tank_has_no_cushion() -> None:
    with pytest.raises(TypeError, match="tee is no expansion tank"):
        cushion_of(scene(house()), "tee")
