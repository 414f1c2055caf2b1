"""What a warm-up is told as."""

from plumbnet.physics.warmup.warmup_result import Books, Moment, WarmUp, WarmupEvent, WarmupHappening

MOMENTS = tuple(
    Moment(60.0 * minute, {"heater": 283.15 + minute}, {0: 5e5 + minute}, frozenset(), {}, {}) for minute in range(3)
)
EVENTS = (
    WarmupEvent(0.0, WarmupHappening.BURNER_ON, "heater", 5e5, 283.15),
    WarmupEvent(60.0, WarmupHappening.OUTLET_OPENS, "spill", 5e5),
    WarmupEvent(90.0, WarmupHappening.OUTLET_OPENS, "relief", 5e5),
)
RUN = WarmUp(
    moments=MOMENTS,
    events=EVENTS,
    books=Books(lost_m3={"spill": 0.25, "relief": 0.5}),
    start_kg=1.0,
    end_kg=1.0,
    start_j=0.0,
    end_j=0.0,
    returned_m3=0.0,
)


def test_course_of_each_body_and_zone() -> None:
    assert RUN.times_s == (0.0, 60.0, 120.0)
    assert RUN.temperature_k("heater") == (283.15, 284.15, 285.15)
    assert RUN.pressure_abs_pa(0) == (5e5, 5e5 + 1.0, 5e5 + 2.0)


def test_all_outlets_together() -> None:
    assert RUN.lost_m3 == 0.75


def test_first_of_a_sort_and_first_to_one_thing() -> None:
    first, relief = RUN.first(WarmupHappening.OUTLET_OPENS), RUN.first(WarmupHappening.OUTLET_OPENS, "relief")
    assert first is not None
    assert first.name == "spill"
    assert relief is not None
    assert relief.time_s == 90.0
    assert RUN.first(WarmupHappening.BOILS) is None


def test_what_ends_a_warm_up() -> None:
    assert {what for what in WarmupHappening if what.is_the_end} == {
        WarmupHappening.ELEMENT_OPENS,
        WarmupHappening.BOILS,
        WarmupHappening.BREAKS,
    }
