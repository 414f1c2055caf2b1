"""Every state of a layout that touching makes."""

import itertools

import pytest
from touched import EVERY_KIND, HOUSE, reported, states_of, touch, touches

from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.touching.touch_code import Touch, UnknownTouch
from plumbnet.study.touching.touch_states import TouchStates
from plumbnet.study.whatif.what_if import whatif


def test_layout_as_drawn_is_the_report_itself() -> None:
    house = states_of(HOUSE)
    assert house.report_in(()) is house.drawn


@pytest.mark.parametrize(
    ("touched", "verdict"),
    [
        ([], Verdict.CONTROLLED),
        ([("tank-stop", "shut")], Verdict.TRAPPED),
        ([("tank", "waterlogged")], Verdict.TRAPPED),
        ([("meter", "exchanged for one without a check")], Verdict.OPEN),
        ([("meter", "exchanged for one without a check"), ("stop", "shut")], Verdict.CONTROLLED),
        ([("tank", "waterlogged"), ("heater/relief", "plugged")], Verdict.SEALED),
        ([("tank", "precharge=20")], Verdict.TRAPPED),
        ([("heater", "exchanged for a tankless one")], Verdict.ON_DEMAND),
        ([("pipe from split to heater", "a check valve")], Verdict.TRAPPED),
        ([("street", "pressure=79")], Verdict.TRAPPED),
    ],
)
def test_verdict_is_what_a_plumber_expects(touched: list[tuple[str, str]], verdict: Verdict) -> None:
    assert reported(states_of(HOUSE), *touched).heaters[0].verdict is verdict


def test_every_state_of_a_house_is_what_whatif_says() -> None:
    house = states_of(HOUSE)
    places = [at for at, one in enumerate(house.touchables) if one.pipe is None and one.options]
    counted = 0
    for pair in itertools.combinations(places, 2):
        for chosen in itertools.product(*(range(len(house.touchables[at].options)) for at in pair)):
            state = tuple(Touch(at, option) for at, option in zip(pair, chosen, strict=True))
            after = whatif(house.drawn, house.changes(state)).after
            assert house.report_in(state).facts.heaters == after.facts.heaters
            counted += 1
    assert counted > 60


def told(states: TouchStates, touch: Touch) -> str:
    """The verdicts of a state, or why it cannot be."""
    try:
        return " ".join(heater.verdict for heater in states.report_in((touch,)).heaters)
    except (ChangeError, LayoutError) as error:
        return str(error)


def test_every_touch_of_every_kind_is_answered_or_refused_in_words() -> None:
    works = states_of(EVERY_KIND)
    for at, one in enumerate(works.touchables):
        if one.pipe is not None and at % 3:
            continue
        state = [Touch(at, option) for option in range(len(one.options))]
        state += [Touch(at, None, number, each.value + 1.0) for number, each in enumerate(one.numbers)]
        for each in state if one.pipe is None else state[at % 5 : at % 5 + 1]:
            assert told(works, each)


def test_digest_is_of_the_file_and_of_all_that_may_be_touched() -> None:
    assert states_of(HOUSE).digest == states_of(HOUSE).digest
    assert states_of(HOUSE).digest != states_of(HOUSE.replace("62 psi", "63 psi")).digest
    assert len(states_of(HOUSE).digest) == 12


@pytest.mark.parametrize("wrong", [Touch(999, 0), Touch(1, 99), Touch(1, None, 0, 5.0), Touch(0, None, 9, 5.0)])
def test_touch_that_there_is_not_is_refused(wrong: Touch) -> None:
    with pytest.raises(UnknownTouch, match="as drawn"):
        states_of(HOUSE).report_in((wrong,))


def test_faults_are_told_from_the_rest_and_what_is_put_in_stands_in_the_order_of_the_pipes() -> None:
    house = states_of(HOUSE)
    state = touches(
        house,
        [
            ("pipe from split to heater", "a check valve"),
            ("meter", "check stuck open"),
            ("stop", "shut"),
            ("pipe from street to stop", "a check valve"),
        ],
    )
    assert house.sound(state) == (state[0], state[2], state[3])
    assert house.put_in(state) == (state[3], state[0])
    assert house.in_words(state[1]) == "meter: check stuck open"
    assert house.in_words(touch(house, "street", "pressure=71.5")) == "street: pressure 71.5 psi"


def test_what_cannot_be_made_is_refused_by_the_engine() -> None:
    with pytest.raises(ChangeError):
        reported(states_of(HOUSE), ("tank", "volume=-5"))
