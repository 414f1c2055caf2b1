import pytest
from sketching import as_drawn, chance, recipe

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.exercise.blocks.heater_plant import single
from plumbnet.study.exercise.blocks.roof_cistern import open_vent, roof_service
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual_sizes import USUAL

CHECK = "check"


def heater(*feed: str, units: str = "us") -> HeaterFacts:
    """The heater of a house under a cistern, with these and a vent in its feed."""
    drawn = Sketch(chance(1), USUAL["metric" if units == "metric" else "us"])
    roof_service(drawn, recipe(high_main=1.0, reducer=1.0, booster=1.0))
    line = [open_vent(drawn) if name == "vent" else drawn.part("check", "check_valve") for name in feed]
    hot = single(drawn, recipe(), line)
    drawn.run(hot, f"{drawn.part('tap', 'fixture')}.hot")
    (found,) = plumbnet.check(read_system(as_drawn(drawn, "Lantern Falls").encode(), file="drawn.yaml")).heaters
    return found


@pytest.mark.parametrize(("units", "static_pa"), [("us", 34 * 2989), ("metric", 10 * 9807)])
def test_height_of_the_cistern_alone_gives_the_pressure(units: str, static_pa: float) -> None:
    found = heater(units=units)
    assert found.static_pa == pytest.approx(static_pa, rel=0.01)
    assert found.ladder[0].outlet == "cistern"


def test_vent_behind_a_check_keeps_the_heater_open_and_one_before_it_does_not() -> None:
    assert [rung.outlet for rung in heater(CHECK, "vent").ladder] == ["vent", "heater/relief"]
    assert [rung.outlet for rung in heater("vent", CHECK).ladder] == ["heater/relief"]
