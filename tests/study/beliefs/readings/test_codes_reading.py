from posing import posed, said

ONE = posed("two-codes", "street -> cv -> tankless -> tap.hot")
"""Closed, which one of the codes allows of a heater that fires on flow, and the other does not."""


FULL_RELIEF = "relief: {pressure: 150 psi, temperature: 210 degF, capacity: 200000 Btu/h}"


def test_tank_too_small_that_was_overlooked_is_told_by_the_belief_behind_it() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    one = posed("two-codes", runs, tank="volume: 0.5 gal", heater=FULL_RELIEF)
    assert one.asked.blanks[0].answer("us") == "neither"
    assert said(one, "both").name == "few-degrees-do-not-matter"


def test_first_code_that_says_otherwise_is_told() -> None:
    first, second = "International Plumbing Code 2021", "Uniform Plumbing Code 2024"
    assert ONE.asked.blanks[0].answer("us") == f"only the {first}"
    passed, strict = said(ONE, "both"), said(ONE, "neither")
    assert (passed.name, strict.name) == ("finding-overlooked", "code-too-strict")
    assert f"under the {second}; there it is an error that closed-without-control stands at tankless." in passed.text
    assert f"under the {first};" in strict.text
    assert said(ONE, f"only the {second}").name == "code-too-strict"
