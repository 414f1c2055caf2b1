from plumbnet.drawing.riser.stacking.free_places import FreePlaces


def test_the_topmost_place_is_found_clear_of_what_is_taken() -> None:
    places = FreePlaces((0.0, 0.0, 300.0, 300.0), [(0.0, 0.0, 300.0, 60.0), (0.0, 60.0, 100.0, 120.0)])
    at = places.first(100.0, 50.0)
    assert at is not None
    assert at[0] >= 112.0
    assert 72.0 <= at[1] <= 84.0
    places.take((at[0], at[1], at[0] + 100.0, at[1] + 50.0))
    again = places.first(100.0, 50.0)
    assert again is not None
    assert again[1] >= at[1] + 50.0 or again[0] >= at[0] + 100.0


def test_there_may_be_none() -> None:
    places = FreePlaces((0.0, 0.0, 300.0, 300.0), [(140.0, 0.0, 160.0, 300.0)])
    assert places.first(200.0, 20.0) is None
    assert places.first(400.0, 20.0) is None
    assert places.least_beyond(200.0, 20.0, 300.0) is None


def test_a_place_that_reaches_least_beyond_an_edge_is_the_lowest_of_those() -> None:
    places = FreePlaces((0.0, 0.0, 400.0, 200.0), [(0.0, 100.0, 220.0, 200.0)])
    assert places.least_beyond(100.0, 60.0, 250.0) == (150.0, 18.0)
