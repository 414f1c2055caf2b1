"""How far cures hold."""

from conftest import system

import plumbnet
from plumbnet.budgets import Budget
from plumbnet.study.margins.cure_margins import MOST_CURES, cures_of
from plumbnet.study.remedies.remedy_search import remedies

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
TWO = """street -> cv1 -> heater1 -> tap1.hot
         street -> cv2 -> heater2 -> tap2.hot"""


def test_charge_and_street_of_the_first_remedy_are_moved() -> None:
    report = plumbnet.check(system("street -> cv -> tee -> heater -> tap.hot", heater=RELIEVED))
    found = remedies(report)
    (cure,) = cures_of(report, found, None, Budget())
    assert (cure.heater, cure.title) == ("heater", found["heater"][0].title)
    fields = [(one.number.part, one.number.field) for one in cure.numbers]
    assert fields[0] == ("street", "pressure")
    assert fields[1][1] == "precharge"
    charge = cure.numbers[1]
    assert charge.below is not None
    assert charge.above is not None
    assert charge.below.holds_to < charge.number.told < charge.above.turns_at


def test_each_remedy_is_looked_at_once_and_few_of_many() -> None:
    report = plumbnet.check(system(TWO, heater1=RELIEVED, heater2=RELIEVED))
    found = remedies(report)
    assert [one.heater for one in cures_of(report, found, None, Budget())] == ["heater1", "heater2"]
    assert [one.heater for one in cures_of(report, found, "heater2", Budget())] == ["heater2"]
    same = dict.fromkeys(found, found["heater1"])
    assert [one.heater for one in cures_of(report, same, None, Budget())] == ["heater1"]
    assert MOST_CURES > 1


def test_heater_without_a_remedy_has_no_margins() -> None:
    report = plumbnet.check(system(TWO, heater1=RELIEVED, heater2=RELIEVED))
    assert list(cures_of(report, {"heater1": ()}, None, Budget())) == []
