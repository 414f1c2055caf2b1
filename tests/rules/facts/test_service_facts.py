from plumbnet.rules.facts.service_facts import TankServiceFacts


def test_tank_that_valves_part_is_held_to_nothing() -> None:
    tank = TankServiceFacts("tank", is_wet=True, carries_heat=False, held_to=(), are_valves_drawn=True)
    assert not tank.held_to
