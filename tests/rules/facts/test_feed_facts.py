from plumbnet.rules.facts.feed_facts import FeedFacts


def test_heater_is_fed_by_no_other_unless_it_is_said() -> None:
    assert FeedFacts("heater", None, ("check",)).fed_by == ()
