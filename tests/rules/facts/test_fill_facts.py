from plumbnet.rules.facts.fill_facts import FillFacts


def test_joint_stands_open_and_holds_plain_water_unless_it_is_said() -> None:
    joint = FillFacts("fill-check", "boiler", "fill-check", (("fill-check",),))
    assert (joint.is_parted, joint.antifreeze, joint.is_drawn) == (False, False, False)
