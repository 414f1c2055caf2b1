"""A belief told by its name, of a layout that shows it and of one that does not."""

import pytest
from posing import RELIEF, posed

import plumbnet
from plumbnet.study.beliefs.belief_file import belief_layout, known_beliefs, known_misreadings
from plumbnet.study.beliefs.tied_beliefs import NotShown, chosen_belief

OPEN = posed("verdict", "street -> heater -> tap.hot", heater=RELIEF).report
ALWAYS = {
    "relief-takes-care",
    "size-beats-charge",
    "few-degrees-do-not-matter",
    "bigger-heater-higher-pressure",
    "somebody-opens-a-tap",
    "high-is-trapped",
}
"""What can be held of any heater with a store and a relief valve."""


@pytest.mark.parametrize("name", list(known_beliefs()))
def test_belief_is_told_of_the_layout_that_refutes_it_and_not_of_one_that_does_not_show_it(name: str) -> None:
    report = plumbnet.check(plumbnet.read_bytes(belief_layout(name)))
    assert chosen_belief(report, "heater", name).name == name
    if name in ALWAYS:
        assert chosen_belief(OPEN, "heater", name).is_belief
    else:
        with pytest.raises(NotShown):
            chosen_belief(OPEN, "heater", name)


def test_words_are_those_of_the_layout() -> None:
    report = posed("verdict", "street -> meter -> heater -> tap.hot", meter="check: true", heater=RELIEF).report
    said = chosen_belief(report, "heater", "meter-is-no-valve").text
    assert said.startswith("You took meter for a plain piece of pipe; ")


def test_what_would_be_untrue_of_a_heater_is_not_said_of_it() -> None:
    tankless = posed("verdict", "street -> cv -> tankless -> tap.hot").report
    for name in ("somebody-opens-a-tap", "tankless-never", "relief-takes-care"):
        with pytest.raises(NotShown):
            chosen_belief(tankless, "tankless", name)


def test_misreading_is_told_of_one_answer_and_of_no_other() -> None:
    for name in known_misreadings():
        with pytest.raises(NotShown, match="the one answer that was misread"):
            chosen_belief(OPEN, "heater", name)
