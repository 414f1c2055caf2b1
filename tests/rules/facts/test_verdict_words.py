from plumbnet.rules.facts.verdict_words import FROM_BEST_TO_WORST, TROUBLED, Verdict


def test_the_five_words_are_as_promised() -> None:
    assert [verdict.value for verdict in Verdict] == ["open", "controlled", "trapped", "sealed", "on-demand"]


def test_every_verdict_has_its_place_in_the_order_of_danger_and_the_last_two_are_trouble() -> None:
    assert sorted(FROM_BEST_TO_WORST) == sorted(Verdict)
    assert set(FROM_BEST_TO_WORST[-2:]) == TROUBLED == {Verdict.TRAPPED, Verdict.SEALED}
