"""Remedies as text: in short under a report, and in full with scenarios that can be pasted into the layout."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.output import record_lines
from plumbnet.report.prose import MOST_NAMED, Paint, plain
from plumbnet.report.text.findings_text import WIDTH
from plumbnet.report.text.heater_text import CAUTION
from plumbnet.report.text.together_report import ALL_TOGETHER, chosen_in_words, outcomes_in_words
from plumbnet.rules import listed
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.study.remedies import (
    MOST_PARTS,
    Found,
    Remedy,
    RemedyList,
    TankPlan,
    as_scenario,
    left_out,
    remedy_lists,
    scenario_text,
)

if TYPE_CHECKING:  # every check imports this module, and none needs what a dossier takes
    from plumbnet.study.dossier import CuredWhole

MOST_REMEDIES = 3
"""Remedies shown of each heater under a report."""
RELIEF_FIRST = (
    "Keep it off. A relief valve makes it safe and not yet right: alone it is no remedy, and a control comes with it."
)
LONG = "what they have to do with each other would take too long to try"
ALONE = (
    "The command plumbnet remedies tries more, and with a heater's name behind the file it looks for that one alone."
)
NO_PLANS = "How few tanks would serve them all was not worked out: it would take too long to try."
SHARED = "They share their water: what follows is one list for all of them."
NONE_FOUND = "Every change tried left it in trouble or broke something else: the piping has to be thought over."


def remedies_section(facts: Facts, found: Found | None) -> list[str]:
    """What would cure each heater in trouble, three remedies at most, once for all heaters that share water.

    None says that they were not looked for. Nothing where no heater is in trouble.
    """
    if found is None:
        return _hung("", not_looked_for())
    lines = ["What would cure it, tried on a copy of this layout, least work first:"] if found else []
    sealed = {heater.name for heater in facts.heaters if heater.verdict is Verdict.SEALED}
    cut = left_out(found)
    for each in remedy_lists(facts.heaters, found):
        own = each.remedies
        if not own and set(each.heaters) <= set(cut):
            continue
        lines += _hung("  ", list_title(each))
        lines += _hung("    ", RELIEF_FIRST) if sealed & set(each.heaters) else []
        lines += [line for number, one in enumerate(own[:MOST_REMEDIES], 1) for line in _cure(facts, number, one)]
        if not own:
            lines += _hung("    ", NONE_FOUND)
        if len(own) > MOST_REMEDIES:
            lines.append(f"    and {len(own) - MOST_REMEDIES} more: the command plumbnet remedies shows them all")
    return [*lines, *(_hung("  ", not_searched(cut)) if cut else [])]


def not_searched(heaters: Sequence[str]) -> str:
    """That not every change was tried for some heaters, and who tries it."""
    return f"Not every change was tried for {listed(heaters, most=MOST_NAMED)}: {LONG}. {ALONE}"


def not_looked_for() -> str:
    """That remedies were not looked for, and who looks for them."""
    small = f"Remedies are looked for in layouts of up to {MOST_PARTS} parts, and in larger ones where few heaters are"
    return f"{small} in trouble; the command plumbnet remedies looks in any."


def list_title(each: RemedyList) -> str:
    """Whom a list of remedies is for."""
    return listed(each.heaters) if len(each.heaters) == 1 else f"{listed(each.heaters)}, which share their water"


def remedies_text(
    report: Report,
    found: Found,
    plans: Sequence[TankPlan] | None = (),
    *,
    whole: "CuredWhole | None" = None,
    paint: Paint = plain,
) -> str:
    """Every remedy with the verdicts before and after and its scenario, once for all heaters that share water.

    Then the plans, None where they were not worked out,
    and what the chosen remedies together make of the layout; ends with a line break.
    """
    title = f": {visible(report.system.title)}" if report.system.title else ""
    lines = [f"{visible(report.system.record.file)}{title}"]
    if not found:
        lines += ["", "No heater here needs a remedy."]
    verdicts = {heater.name: heater.verdict for heater in report.heaters}
    cut = left_out(found)
    for each in remedy_lists(report.heaters, found):
        if not each.remedies and set(each.heaters) <= set(cut):
            continue
        lines += [
            "",
            *(f"{name}: {paint(verdicts[name].value.upper(), verdicts[name].value)}" for name in each.heaters),
        ]
        lines += _hung("  ", SHARED) if len(each.heaters) > 1 else []
        lines += _hung("  ", RELIEF_FIRST) if Verdict.SEALED in {verdicts[name] for name in each.heaters} else []
        lines += list(_of_heater(report.facts, each.remedies))[:-1]
    lines += ["", *_hung("", not_searched(cut))] if cut else []
    lines += ["", *_hung("", NO_PLANS)] if plans is None else []
    for plan in plans or ():
        lines += ["", *_plan(report.facts, plan)]
    if whole is not None:
        lines += ["", *_together(whole)]
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
    return [
        *_hung(f"    {number}. ", remedy.title),
        *(_hung("       ", remedy_place(remedy)) if remedy.why else []),
        *_hung("       ", remedy_outcome(facts, remedy)),
    ]


def remedy_outcome(facts: Facts, remedy: Remedy) -> str:
    """What a remedy makes of its heater, and which others it cures."""
    settles = "" if remedy.settled_pa is None else f" at {facts.pressure(remedy.settled_pa)} when all is hot"
    others = [name for name in remedy.cures if name != remedy.heater]
    also = f"; it cures {listed(others)} as well" if others else ""
    return f"Then {remedy.heater} is {remedy.verdict.value}{settles}{also}."


def remedy_place(remedy: Remedy) -> str:
    """Why a remedy is made where it is; empty where it has no place of its own."""
    return f"Why there: it is {remedy.why}." if remedy.why else ""


def _together(whole: "CuredWhole") -> Iterator[str]:
    """The remedies that were made together, what becomes of the heaters, and the scenario."""
    yield f"{ALL_TOGETHER}:"
    for number, title in enumerate(chosen_in_words(whole), 1):
        yield from _hung(f"    {number}. ", title)
    for text in outcomes_in_words(whole):
        yield from _hung("  ", text)
    note = f"Cures {listed(whole.together.cures)}."
    yield from scenario_text("all of these", note, whole.together.changes).splitlines()


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
