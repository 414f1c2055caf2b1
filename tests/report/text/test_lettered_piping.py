from conftest import system

from plumbnet.report.text.lettered_piping import piping_tree

LOOPED = """
street -> meter -> cv -> tee -> heater -> tee2 -> tap.hot
tee2 -> pump -> tee
"""


def test_chain_stands_in_a_line_and_a_branch_on_its_own() -> None:
    assert piping_tree(system("street -> valve -> tee -> heater -> tap.hot\ntee -> tap.cold")) == (
        "street (main) > valve > tee",
        "├ heater (storage heater) > tap.hot (fixture)",
        "└ tap.cold (above)",
    )


def test_loop_ends_where_it_comes_back_to_what_stands_above() -> None:
    assert piping_tree(system(LOOPED)) == (
        "street (main) > meter > cv (check valve) > tee > heater (storage heater) > tee2",
        "├ tap.hot (fixture)",
        "└ pump (circulator) > tee (above)",
    )


def test_what_no_supply_leads_to_is_drawn_below() -> None:
    lines = piping_tree(system("tee -> tank\nstreet -> heater -> tap.hot"))
    assert lines[0].startswith("street (main) > ")
    assert lines[1:] == ("tee > tank (expansion tank)",)


def test_branch_within_a_branch_is_set_further_in() -> None:
    lines = piping_tree(system("street -> tee -> tee2 -> tap.hot\ntee2 -> tap2.hot\ntee -> tap3.cold"))
    assert lines[1:] == ("├ tee2", "│ ├ tap.hot (fixture)", "│ └ tap2.hot (fixture)", "└ tap3.cold (fixture)")


def test_very_long_riser_is_drawn() -> None:
    floors = [f"tee{n} -> tee{n + 1}\ntee{n} -> tap{n}.cold" for n in range(1, 600)]
    assert len(piping_tree(system("street -> tee1\n" + "\n".join(floors)))) == 1 + 2 * 599
