from conftest import system

import plumbnet
from plumbnet.analysis.water_walk import water_walk
from plumbnet.report.trace.hop_sentences import single_hops

RELIEF = "relief: {pressure: 150 psi}"
LAST = "opens at 150 psi: the last safety device, and no control"


def told(runs: str, **parts: str) -> list[str]:
    report = plumbnet.check(system(runs, **{"heater": RELIEF, **parts}))
    return list(single_hops(report.facts, water_walk(report, report.heaters[0])))


def test_each_hop_says_whence_whither_and_what_becomes_of_the_water() -> None:
    assert told("street -> cv -> tee -> valve -> heater -> tap.hot\ntee -> tank", tank="state: waterlogged") == [
        "From heater it comes to valve, a valve: it lets the water through.",
        "From valve it comes to tee, a tee: it goes every way from there.",
        "From tee it comes to cv, a check valve: it STOPS it: water passes only the other way.",
        "From tee it comes to tank, an expansion tank: it is full of water and takes none.",
        "From heater it comes to tap, a fixture: it is shut, a dead end.",
        f"From heater it comes to heater/relief, a relief valve: it {LAST}.",
    ]


def test_outlet_that_takes_none_is_told_why() -> None:
    hops = told("street -> tee -> heater -> tap.hot\ntee -> prv -> relief", prv="set: 100 psi")
    assert any(hop.endswith("it takes none of it: street takes any amount before.") for hop in hops)
