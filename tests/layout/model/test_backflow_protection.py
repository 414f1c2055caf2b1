from plumbnet.layout.model.backflow_protection import BackflowProtection


def test_protection_ranks_from_a_vacuum_breaker_to_an_air_gap() -> None:
    assert [one.rank for one in BackflowProtection] == [1, 2, 3, 4, 5, 6, 7]
    double, vented = BackflowProtection.DOUBLE_CHECK, BackflowProtection.VENTED_DUAL_CHECK
    assert double.rank < vented.rank < BackflowProtection.REDUCED_PRESSURE.rank < BackflowProtection.AIR_GAP.rank


def test_vacuum_breaker_alone_does_not_hold_against_a_building_that_presses_back() -> None:
    assert [one.value for one in BackflowProtection if not one.bears_backpressure] == ["vacuum breaker"]


def test_what_leaks_back_is_seen_at_a_vent_a_relief_port_and_an_air_gap() -> None:
    venting = [one.value for one in BackflowProtection if one.vents]
    assert venting == ["vented dual check", "reduced pressure", "air gap"]
