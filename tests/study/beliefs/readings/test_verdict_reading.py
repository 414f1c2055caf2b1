from posing import RELIEF, posed, said

ONE = posed("verdict", "street -> meter -> heater -> tap.hot", meter="check: true", heater=RELIEF)


def test_option_is_read_as_the_verdict_of_that_word() -> None:
    assert said(ONE, "open").name == "meter-is-no-valve"
    assert said(ONE, "on-demand").name == "somebody-opens-a-tap"
