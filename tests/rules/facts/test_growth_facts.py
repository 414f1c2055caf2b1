from conftest import system

import plumbnet
from plumbnet.rules.facts.all_facts import Facts


def facts(runs: str, rules: str, **parts: str) -> Facts:
    return plumbnet.check(system(runs, **parts), rules=rules).facts


def test_growth_back_to_the_main_is_known_under_rules_that_keep_it_in_the_supply_pipe_alone() -> None:
    runs = "street -> valve -> heater -> tap.hot\nheater.relief -> relief"
    (growth,) = facts(runs, "uk-2010").returns
    assert (growth.main, growth.heaters, growth.mixed_k) == ("street", ("heater",), None)
    assert growth.expansion_m3 > growth.held_m3
    assert facts(runs, "general").returns == ()


def test_what_heating_again_and_again_pumps_up_is_known_with_the_check_and_the_tank_before_it() -> None:
    # street -> cv -> tee -> heater1 -> cv2 -> tee2 -> heater2     the tank hangs on tee2, where nothing comes back
    runs = """
        street -> cv -> tee -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot
        tee2 -> tank
        heater1.relief -> relief1
        heater2.relief -> relief2
    """
    (pumped,) = facts(runs, "general", tank="volume: 20 gal").pumped
    assert (pumped.heaters, pumped.through) == (("heater1",), ("cv2",))
    assert pumped.top_pa > pumped.limit_pa
    assert pumped.tank_m3 is not None
