"""Where and how few: the place where one tank serves most trapped heaters, and the fewest tanks that serve them all."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.budgets import PLANS, Budget
from plumbnet.layout.model import Change
from plumbnet.layout.units import PRESSURE, parse_measure
from plumbnet.study.remedies.fewest_tanks.set_cover import (
    MOST_EXACT,
    covers,
    greedy_bound,
    greedy_cover,
    without_dominated,
)
from plumbnet.study.remedies.fewest_tanks.tank_sites import TankSite, TankSites
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types import added
from plumbnet.study.remedies.trial import tried
from plumbnet.study.remedies.trial_sizes import STEPS, sizes_to_try

MOST_TRIED = 64
"""Choices of sites that are tried by analysis before the search gives up."""
SEVERAL = 2
"""Trapped heaters from which on it is worth asking how few tanks would do."""


@dataclass(frozen=True, slots=True)
class HungTank:
    """A tank at its place.

    `at` is the fitting it joins, `where` says so in words. `least_m3` is the smallest volume that does, `sizes_m3`
    what can be had (several alike where one is not enough), `charge_pa` its charge, gauge at its height. `serves` are
    the trapped heaters it is sized for.
    """

    at: str
    where: str
    least_m3: float
    sizes_m3: tuple[float, ...]
    charge_pa: float
    serves: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TankPlan:
    """Tanks that were hung in a copy of the layout, analysed, and found to break nothing.

    `cures` are the heaters it cures, `left` the trapped ones it does not. `bound` is 1 where no fewer tanks can do
    it, and otherwise how many times the fewest there may be at most.
    """

    tanks: tuple[HungTank, ...]
    changes: tuple[Change, ...]
    cures: tuple[str, ...]
    left: tuple[str, ...]
    bound: float = 1.0


def one_tank(report: Report) -> TankPlan | None:
    """The tank that alone cures most trapped heaters; None where none cures any.

    Of places that serve equally many the one with the smaller tank, then the first by name.
    """
    search = _Search(TankSites(RemedyContext(report, budget=Budget(PLANS))))
    plans: list[TankPlan] = []
    for site in search.sites.all():
        if plans and len(site.serves) < max(len(plan.cures) for plan in plans):
            break
        plan = search.proved([site])
        if plan is not None:
            plans.append(plan)
    return min(plans, key=lambda plan: (-len(plan.cures), plan.tanks[0].least_m3, plan.tanks[0].at), default=None)


def fewest_tanks(report: Report) -> TankPlan | None:
    """The fewest tanks that cure every trapped heater a tank can cure; None where there is none.

    Exact where at most twelve zones come into question, by looking at every choice; otherwise greedy, at most
    `bound` times the fewest. Tanks side by side at one place, where no single size is large enough, count as one.
    """
    search = _Search(TankSites(RemedyContext(report, budget=Budget(PLANS))))
    sites = [site for site in search.sites.all() if search.can_hold(site)]
    sites = [sites[place] for place in without_dominated([site.serves for site in sites])]
    if not sites:
        return None
    serves = [site.serves for site in sites]
    is_exact = len(sites) <= MOST_EXACT
    choices: Iterator[tuple[int, ...]] = covers(serves) if is_exact else iter([greedy_cover(serves)])
    for _, chosen in zip(range(MOST_TRIED), choices, strict=False):
        plan = search.proved([sites[place] for place in chosen], bound=1.0 if is_exact else greedy_bound(serves))
        if plan is not None:
            return plan
    return None


def plans(report: Report) -> tuple[TankPlan, ...]:
    """What tanks alone do for several trapped heaters: the one that serves most, and the fewest that serve all.

    One plan where both are the same; none for a single trapped heater. Raises Spent (budgets) where it
    takes too long.
    """
    if len(TankSites(RemedyContext(report)).trapped) < SEVERAL:
        return ()
    most, all_of_them = one_tank(report), fewest_tanks(report)
    if most is None or all_of_them is None or most.changes == all_of_them.changes:
        return () if most is None else (most,)
    return most, all_of_them


@dataclass(frozen=True)
class _Search:
    """Hangs tanks at sites and proves them."""

    sites: TankSites

    def can_hold(self, site: TankSite) -> bool:
        """Whether some tank at a site can hold all that it serves."""
        return any(self._hung([site], 0))

    def proved(self, chosen: Sequence[TankSite], *, bound: float = 1.0) -> TankPlan | None:
        """The plan with a tank at each chosen site, in the first sizes that cure all it is for; None where none do."""
        scene = self.sites.scene
        for step in range(STEPS):
            hung = list(self._hung(chosen, step))
            if len(hung) < len(chosen):
                return None
            changes = tuple(self._changes(chosen, hung))
            trial = tried(scene, changes)
            if trial is None or not trial.is_faultless:
                continue
            cures = tuple(name for name in trial.cures() if name in self.sites.trapped)
            if all(name in cures for tank in hung for name in tank.serves):
                left = tuple(name for name in self.sites.trapped if name not in cures)
                return TankPlan(tuple(hung), changes, cures, left, bound)
        return None

    def _hung(self, chosen: Sequence[TankSite], step: int) -> Iterator[HungTank]:
        """A tank for each site, some steps above the least size; a heater counts for the first site that serves it."""
        system = self.sites.scene.system
        served: set[str] = set()
        for site in chosen:
            own = frozenset(site.serves - served)
            served |= own
            charge_pa = parse_measure(site.joint.charge, PRESSURE, system.units)
            least_m3 = self.sites.duty(site, own).least_m3(charge_pa)
            sizes = [] if least_m3 is None else list(sizes_to_try(least_m3, self.sites.scene.sizes_m3))
            if least_m3 is not None and sizes:
                at = min(step, len(sizes) - 1)
                in_order = tuple(name for name in self.sites.trapped if name in own)
                yield HungTank(site.joint.at, site.joint.where, least_m3, sizes[at], charge_pa, in_order)

    def _changes(self, chosen: Sequence[TankSite], hung: Sequence[HungTank]) -> Iterator[Change]:
        taken: tuple[str, ...] = ()
        for site, tank in zip(chosen, hung, strict=True):
            yield from site.joint.makes
            for change in added(self.sites.scene, site.joint, site.base, tank.sizes_m3, taken=taken):
                if change.add is not None:
                    taken = (*taken, change.add.part)
                yield change
