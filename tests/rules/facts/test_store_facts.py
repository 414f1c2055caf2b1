from plumbnet.rules.facts.store_facts import StoreFacts


def test_store_heated_elsewhere_has_no_setpoint_and_one_that_nobody_draws_from_no_tap() -> None:
    store = StoreFacts(
        "store", None, None, None, 0.0, None, 0.0, is_height_given=False, is_fed_from_below=None, air_comes_by=()
    )
    assert (store.setpoint_k, store.passes_k, store.tap) == (None, None, None)
