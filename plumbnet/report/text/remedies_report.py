"""Remedies as text: in short under a report, and in full with scenarios that can be pasted into the layout."""

import textwrap
from collections.abc import Iterator, Sequence

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.output import record_lines
from plumbnet.report.prose import Paint, plain
from plumbnet.report.text.findings_text import WIDTH
from plumbnet.report.text.heater_text import CAUTION
from plumbnet.rules import listed
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.study.remedies import MOST_PARTS, Found, Remedy, TankPlan, as_scenario, scenario_text

MOST_REMEDIES = 3
"""Remedies shown of each heater under a report."""
RELIEF_FIRST = (
    "Keep it off. A relief valve makes it safe and not yet right: alone it is no remedy, and a control comes with it."
)
NONE_FOUND = "Every change tried left it in trouble or broke something else: the piping has to be thought over."


def remedies_section(facts: Facts, found: Found | None) -> list[str]:
    """What would cure each heater in trouble, three at most of each; None says that they were not looked for.

    Nothing where no heater is in trouble.
    """
    if found is None:
        small = f"Remedies are looked for in layouts of up to {MOST_PARTS} parts"
        return _hung("", f"{small}; the command plumbnet remedies looks in any.")
    lines = ["What would cure it, tried on a copy of this layout, least work first:"] if found else []
    sealed = {heater.name for heater in facts.heaters if heater.verdict is Verdict.SEALED}
    for heater, own in found.items():
        lines.append(f"  {heater}")
        lines += _hung("    ", RELIEF_FIRST) if heater in sealed else []
        lines += [line for number, one in enumerate(own[:MOST_REMEDIES], 1) for line in _cure(facts, number, one)]
        if not own:
            lines += _hung("    ", NONE_FOUND)
        if len(own) > MOST_REMEDIES:
            lines.append(f"    and {len(own) - MOST_REMEDIES} more: the command plumbnet remedies shows them all")
    return lines


def remedies_text(report: Report, found: Found, plans: Sequence[TankPlan] = (), *, paint: Paint = plain) -> str:
    """Every remedy with the verdicts before and after and its scenario, then the plans; ends with a line break."""
    title = f": {visible(report.system.title)}" if report.system.title else ""
    lines = [f"{visible(report.system.record.file)}{title}"]
    if not found:
        lines += ["", "No heater here needs a remedy."]
    for heater in report.heaters:
        if heater.name in found:
            lines += ["", f"{heater.name}: {paint(heater.verdict.value.upper(), heater.verdict.value)}"]
            lines += _hung("  ", RELIEF_FIRST) if heater.verdict is Verdict.SEALED else []
            lines += list(_of_heater(report.facts, found[heater.name]))[:-1]
    for plan in plans:
        lines += ["", *_plan(report.facts, plan)]
    lines += ["", *record_lines(report), "", *textwrap.wrap(CAUTION, WIDTH)]
    return "\n".join(lines) + "\n"


def _of_heater(facts: Facts, own: Sequence[Remedy]) -> Iterator[str]:
    if not own:
        yield from (*_hung("  ", NONE_FOUND), "")
    for number, remedy in enumerate(own, 1):
        yield from _cure(facts, number, remedy)
        yield "       To try it, paste this under scenarios:"
        yield from as_scenario(remedy, f"{remedy.heater} cured {number}").splitlines()
        yield ""


def _cure(facts: Facts, number: int, remedy: Remedy) -> list[str]:
    return [*_hung(f"    {number}. ", remedy.title), *_hung("       ", remedy_outcome(facts, remedy))]


def remedy_outcome(facts: Facts, remedy: Remedy) -> str:
    """What a remedy makes of its heater, and which others it cures."""
    settles = "" if remedy.settled_pa is None else f" at {facts.pressure(remedy.settled_pa)} when all is hot"
    others = [name for name in remedy.cures if name != remedy.heater]
    also = f"; it cures {listed(others)} as well" if others else ""
    return f"Then {remedy.heater} is {remedy.verdict.value}{settles}{also}."


def _plan(facts: Facts, plan: TankPlan) -> Iterator[str]:
    """Tanks that serve several heaters, and how sure it is that no fewer would."""
    count = "One tank" if len(plan.tanks) == 1 else f"{len(plan.tanks)} tanks"
    yield from _hung("", f"{count} for {listed(plan.cures)}, with nothing else changed:")
    for tank in plan.tanks:
        sizes = " and ".join(facts.volume(size) for size in tank.sizes_m3)
        text = (
            f"{tank.where}: {sizes} (at least {facts.volume(tank.least_m3)}), charged to "
            f"{facts.pressure(tank.charge_pa)}, for {listed(tank.serves)}"
        )
        yield from _hung("  ", text)
    if plan.left:
        yield from _hung("  ", f"It leaves {listed(plan.left)} as before.")
    if plan.bound > 1.0:
        yield from _hung("  ", f"Fewer may do: there are at most {plan.bound:.2g} times as many as are needed.")
    name = "one tank" if len(plan.tanks) == 1 else "fewest tanks"
    yield from scenario_text(name, f"Tanks for {listed(plan.cures)}.", plan.changes).splitlines()


def _hung(label: str, text: str) -> list[str]:
    """Text wrapped behind its label, following lines under the text."""
    return textwrap.wrap(text, WIDTH, initial_indent=label, subsequent_indent=" " * len(label), break_on_hyphens=False)
