from posing import posed, said

ONE = posed("two-codes", "street -> cv -> tankless -> tap.hot")
"""Closed, which one of the codes allows of a heater that fires on flow, and the other does not."""


def test_first_code_that_says_otherwise_is_told() -> None:
    first, second = "International Plumbing Code 2021", "Uniform Plumbing Code 2024"
    assert ONE.asked.blanks[0].answer("us") == f"only the {first}"
    passed, strict = said(ONE, "both"), said(ONE, "neither")
    assert (passed.name, strict.name) == ("finding-overlooked", "code-too-strict")
    assert f"under the {second}; there it is an error that closed-without-control stands at tankless." in passed.text
    assert f"under the {first};" in strict.text
    assert said(ONE, f"only the {second}").name == "code-too-strict"
