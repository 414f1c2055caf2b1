"""The beliefs that come with the program, and that the engine refutes each on its layout."""

import re
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

import plumbnet
from plumbnet.analysis import Report
from plumbnet.rules.facts import HeaterFacts, Verdict
from plumbnet.study.beliefs.belief_file import belief_layout, known_beliefs, known_misreadings
from plumbnet.study.whatif import whatif

PSI = 6894.757293168361
LIMIT_PA = 80 * PSI
CODE = Path(__file__).parents[3] / "plumbnet" / "study" / "beliefs"


def heater(report: Report) -> HeaterFacts:
    (only,) = report.heaters
    return only


def supposed(report: Report, scenario: str) -> HeaterFacts:
    return heater(whatif(report, scenario=scenario).after)


def relief(report: Report) -> bool:
    """It opens only when the pressure is far past the limit."""
    one = heater(report)
    return one.verdict is Verdict.TRAPPED and one.ladder[0].opens_pa > LIMIT_PA + 50 * PSI


def reducer(report: Report) -> bool:
    """Set to 50, it lets what it feeds come to nearly 70."""
    return (heater(report).settled_pa or 0.0) > 65 * PSI


def bypass(report: Report) -> bool:
    """It opens, past the limit; were the street below the limit it would do."""
    one = heater(report)
    opens = one.way_out is not None and one.way_out.opens_pa > LIMIT_PA
    return one.verdict is Verdict.TRAPPED and opens and supposed(report, "street-lower").verdict is Verdict.OPEN


def meter(report: Report) -> bool:
    return heater(report).stopped_by.sets == (("meter",),) and (
        supposed(report, "meter-of-another-make").verdict is Verdict.OPEN
    )


def tank_anywhere(report: Report) -> bool:
    moved = supposed(report, "tank-behind-the-check")
    return heater(report).verdict is Verdict.TRAPPED and moved.verdict is Verdict.CONTROLLED


def size(report: Report) -> bool:
    """The smaller tank holds what the larger does not."""
    smaller = supposed(report, "smaller-and-charged")
    return heater(report).verdict is Verdict.TRAPPED and smaller.verdict is Verdict.CONTROLLED


def few_degrees(report: Report) -> bool:
    locked = heater(report).locked
    return locked is not None and locked.rise_k.walls < 3.0


def bigger(report: Report) -> bool:
    one, four = heater(report).locked, supposed(report, "bigger").locked
    return one is not None and four is not None and one.opens_pa == four.opens_pa and one.rise_k == four.rise_k


def tankless(report: Report) -> bool:
    return heater(report).verdict is Verdict.TRAPPED and supposed(report, "pump-off").verdict is Verdict.ON_DEMAND


def pump(report: Report) -> bool:
    on, off = heater(report), supposed(report, "pump-off")
    return bool(on.loops) and not off.loops and (on.static_pa, on.verdict) == (off.static_pa, off.verdict)


def leak(report: Report) -> bool:
    """Another check holds; and what is open by a leak is trapped once it is flushed."""
    alone, flushed = supposed(report, "meter-without-check"), supposed(report, "then-flushed")
    verdicts = (heater(report).verdict, alone.verdict, flushed.verdict)
    return verdicts == (Verdict.TRAPPED, Verdict.OPEN, Verdict.TRAPPED)


def tap(report: Report) -> bool:
    """A quarter of an hour is enough, whatever the walls give."""
    locked = heater(report).locked
    return locked is not None and locked.firing_s is not None and locked.firing_s.walls < 900.0


def high(report: Report) -> bool:
    one, low = heater(report), supposed(report, "low-with-a-check")
    is_high = one.verdict is Verdict.OPEN and (one.static_pa or 0.0) > LIMIT_PA
    return is_high and low.verdict is Verdict.TRAPPED and (low.static_pa or LIMIT_PA) < LIMIT_PA


REFUTED: Mapping[str, Callable[[Report], bool]] = {
    "relief-takes-care": relief,
    "reducer-caps-pressure": reducer,
    "bypass-needs-no-tank": bypass,
    "meter-is-no-valve": meter,
    "any-tank-anywhere": tank_anywhere,
    "size-beats-charge": size,
    "few-degrees-do-not-matter": few_degrees,
    "bigger-heater-higher-pressure": bigger,
    "tankless-never": tankless,
    "pump-raises-pressure": pump,
    "leaking-check-is-open": leak,
    "somebody-opens-a-tap": tap,
    "high-is-trapped": high,
}


def test_thirteen_beliefs_come_with_the_program() -> None:
    assert list(known_beliefs()) == list(REFUTED)
    assert len(REFUTED) == 13


@pytest.mark.parametrize("name", REFUTED)
def test_engine_refutes_the_belief_on_its_layout(name: str) -> None:
    assert REFUTED[name](plumbnet.check(belief_layout(name)))


def test_layout_of_a_belief_there_is_not_is_no_file() -> None:
    with pytest.raises(KeyError):
        belief_layout("check-passed-over")


def test_every_entry_is_told_by_some_answer() -> None:
    code = "".join(path.read_text(encoding="utf-8") for path in CODE.rglob("*.py"))
    assert {name for name in {**known_beliefs(), **known_misreadings()} if f'"{name}"' not in code} == set()


def test_every_entry_makes_two_sentences_that_judge_nobody() -> None:
    for name, one in {**known_beliefs(), **known_misreadings()}.items():
        assert one.holds.endswith("."), name
        assert one.thought.startswith("You "), name
        assert one.look.endswith((".", "?")), name
        assert not re.search(r"\b(wrong|mistake|false)\b", f"{one.thought} {one.meets} {one.look}"), name
