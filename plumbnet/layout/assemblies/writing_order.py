"""A file with assemblies to all that it comes to, or to what stands in the way, in the order of the format's rules."""

from collections.abc import Mapping, Sequence

from plumbnet.layout.assemblies.body_reader import ASSEMBLIES, BodyReader
from plumbnet.layout.assemblies.definition import AssemblyBody, WrittenAt
from plumbnet.layout.assemblies.joined_ports import hand_on, look_for_unjoined
from plumbnet.layout.assemblies.port_places import PortPlaces
from plumbnet.layout.assemblies.run_plan import PlannedChain, RunPlanner
from plumbnet.layout.assemblies.survey import Survey
from plumbnet.layout.assemblies.told_once import TextSource, ToldOnce
from plumbnet.layout.assemblies.writing_out import OutWriter, WrittenOut
from plumbnet.layout.assemblies.wrong import Wrong
from plumbnet.layout.model import MOST_PIPES, Mistake, shown_value
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Plain


def written_out(sources: Sequence[TextSource], units: Units, told: ToldOnce) -> WrittenOut | None:
    """All parts and chains of a layout, the first of the files; the others bring assemblies and nothing else.

    What is wrong goes to `told`; None where nothing can be written out at all. Each assembly is looked at once, by
    itself; then parts and pipes are counted; then they are written out.
    """
    values, places = _assemblies(sources, told)
    reader = BodyReader(told, units, values)
    top = sources[0].root.value
    layout = reader.body("", top if isinstance(top, dict) else {}, WrittenAt(0, ()))
    assemblies = {name: reader.assembly(name, value, places[name]) for name, value in values.items()}
    survey = Survey(layout, assemblies, told)
    survey.look()
    if not survey.sound:
        return None
    plans = _plans(layout, assemblies, units, told)
    pipes = survey.pipes({name: sum(len(one.stops) - 1 for one in plan) for name, plan in plans.items()})
    if pipes > MOST_PIPES:
        text = f"written out, the layout has {pipes:,} pipes; the most is {MOST_PIPES:,}"
        told.tell(0, Mistake(("runs",), text, at_key=True))
        return None
    return OutWriter(assemblies, plans, units).write(layout)


def _assemblies(sources: Sequence[TextSource], told: ToldOnce) -> tuple[dict[str, Plain], dict[str, WrittenAt]]:
    """The assemblies of all files and where each stands; those of the layout count where two have one name."""
    values: dict[str, Plain] = {}
    places: dict[str, WrittenAt] = {}
    for number, source in enumerate(sources):
        top = source.root.value
        written = top.get(ASSEMBLIES, {}) if isinstance(top, dict) else {}
        if not isinstance(written, dict):
            text = f"assemblies: a mapping is wanted here, not {shown_value(written)}"
            told.tell(number, Mistake((ASSEMBLIES,), text))
            continue
        for name, value in written.items():
            if name not in values:
                values[name], places[name] = value, WrittenAt(number, (ASSEMBLIES, name))
    return values, places


def _plans(
    layout: AssemblyBody, assemblies: Mapping[str, AssemblyBody], units: Units, told: ToldOnce
) -> dict[str, Sequence[PlannedChain]]:
    places = PortPlaces(assemblies)
    return {name: _plan(body, places, units, told) for name, body in (("", layout), *assemblies.items())}


def _plan(body: AssemblyBody, places: PortPlaces, units: Units, told: ToldOnce) -> Sequence[PlannedChain]:
    """The chains of a body, with what is wrong in its runs and with what is left unjoined told."""
    planner = RunPlanner(body, places, units)
    chains: list[PlannedChain] = []
    sound = True
    hand_on(planner, told)
    for index, run in enumerate(body.runs):
        at = body.at.under("runs", index)
        try:
            chains += planner.chains(run, at)
        except Wrong as wrong:
            sound = False
            place = at if wrong.path or not isinstance(run, dict) or "path" not in run else at.under("path")
            told.tell_of(body.name, place.under(*wrong.path), wrong.text, stop=wrong.stop)
    if sound:
        look_for_unjoined(planner, chains, told)
    return chains
