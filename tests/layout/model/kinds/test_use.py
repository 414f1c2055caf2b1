"""Where people draw water."""

from usual import usual

from plumbnet.layout.model.part import Free, Outlet, Role


def test_fixture_is_shut_and_keeps_hot_and_cold_apart() -> None:
    tap = usual("fixture")
    assert list(tap.passages()) == []
    assert list(tap.outlets()) == []
    assert not tap.is_accidental()
    assert tap.assumed == {"crossover": "does not join hot and cold"}


def test_fixture_is_indoors_unless_it_says_otherwise() -> None:
    assert not usual("fixture").draws_outdoors()
    hose = usual("fixture", outdoor=True)
    assert hose.draws_outdoors()
    assert hose.drawn_as() == "hose_bibb"
    assert usual("fixture", outdoor=True, drawing=True).drawn_as() == "running_fixture"


def test_crossover_joins_hot_and_cold_by_accident() -> None:
    tap = usual("fixture", crossover=True)
    assert list(tap.passages()) == [Free("hot", "cold")]
    assert tap.is_accidental()


def test_running_fixture_lets_water_into_the_air_at_both_connections() -> None:
    assert list(usual("fixture", drawing=True).outlets()) == [
        Outlet("hot", Role.AIR, 0.0),
        Outlet("cold", Role.AIR, 0.0),
    ]


def test_connection_of_a_fixture_must_be_named_and_ends_the_run() -> None:
    tap = usual("fixture")
    assert (tap.enters_at(), tap.leaves_at(), tap.mate("hot"), tap.mate("cold")) == (None, None, None, None)
    assert tap.draws_at() == ("hot", "cold")
