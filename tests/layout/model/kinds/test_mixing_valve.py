"""The kind "mixing_valve"."""

from usual import usual

from plumbnet.layout.model.event import Event, Extremes
from plumbnet.layout.model.part import Free, OneWay, Stray

EXTREMES = Extremes(limit_pa=551_580.0, relief_k=372.0)


def test_mixing_valve_keeps_hot_and_cold_apart_by_its_checks() -> None:
    mixer = usual("mixing_valve")
    assert list(mixer.passages()) == [OneWay("hot", "mixed"), OneWay("cold", "mixed")]
    assert not mixer.is_accidental()
    assert mixer.assumed == {"checks": "has checks in both inlets"}


def test_mixing_valve_without_checks_joins_hot_and_cold_by_accident() -> None:
    mixer = usual("mixing_valve", checks=False)
    assert list(mixer.passages()) == [Free("hot", "mixed"), Free("cold", "mixed")]
    assert mixer.is_accidental()


def test_mixing_valve_is_entered_by_name_and_left_mixed() -> None:
    mixer = usual("mixing_valve")
    assert (mixer.enters_at(), mixer.leaves_at()) == (None, "mixed")
    assert [mixer.mate(port) for port in ("hot", "cold", "mixed")] == ["mixed", "mixed", None]


def test_mixing_valve_tempers_to_its_outlet_and_of_one_that_says_none_nothing_is_known() -> None:
    said, unsaid = usual("mixing_valve", outlet="50 degC"), usual("mixing_valve")
    assert (said.tempers_k(), unsaid.tempers_k()) == (323.15, None)
    assert (list(said.strays()), list(unsaid.strays())) == ([Stray("outlet_k", together=True)], [])


def test_mixing_valve_whose_outlet_is_known_may_pass_hot_water() -> None:
    stuck, hot = (
        Event("checks stuck open", "fail", {"how": "checks_stuck_open"}),
        Event("passing hot", "fail", {"how": "passing_hot"}),
    )
    assert list(usual("mixing_valve").events(EXTREMES)) == [stuck]
    assert list(usual("mixing_valve", outlet="50 degC").events(EXTREMES)) == [stuck, hot]
    assert usual("mixing_valve").fails_as == "checks_stuck_open"  # as files have meant it that name no failure
