"""The eight sizing methods by their formulas, in plain arithmetic; pressures absolute, at the tank."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from oracles.warm_water import AIR_PA, Warmth, saturation
from plumbnet.layout.model.part import Mixture

LITRE, BAR = 1e-3, 1e5
STEEL = 1.17e-5
"""Linear expansion of steel in a kelvin: 6.5e-6 in a degree Fahrenheit."""


@dataclass(frozen=True)
class Job:
    """What a tank is to do."""

    volume: float
    warmth: Warmth
    static: float
    limit: float
    relief: float | None
    column: float
    """Gauge pressure of the water above the tank."""
    charge: float | None = None
    alpha: float = STEEL
    mean_k: float | None = None

    @property
    def mixture(self) -> Mixture | None:
        """Antifreeze in it."""
        return self.warmth.mixture


@dataclass(frozen=True)
class Answer:
    """A tank and the charge it is given; none for an open tank."""

    tank: float
    charge: float | None


class NoAnswer(ValueError):
    """The method cannot say."""


class NoTank(ValueError):
    """No tank would do."""


def boyle(water: float, charge: float, start: float, end: float) -> float:
    """The shell whose gas, charged so, gives way to the water between two pressures."""
    start = max(start, charge)
    if end <= start:
        raise NoTank
    return water * start * end / (charge * (end - start))


def net_growth(job: Job) -> float:
    """Growth of water less that of steel round it."""
    walls = 3 * job.alpha * max(0.0, job.warmth.hot_k - job.warmth.cold_k)
    return max(0.0, job.warmth.growth - walls)


def membrane(job: Job) -> Answer:
    """All growth from the static pressure to the limit."""
    charge = job.static if job.charge is None else job.charge
    return Answer(boyle(job.volume * job.warmth.growth, charge, job.static, job.limit), charge)


def ashrae_diaphragm(job: Job) -> Answer:
    """Net growth; charged to the static pressure whatever was chosen."""
    return Answer(boyle(job.volume * net_growth(job), job.static, job.static, job.limit), job.static)


def ashrae_air_water(job: Job) -> Answer:
    """Net growth in a plain tank that was empty under air."""
    return Answer(boyle(job.volume * net_growth(job), AIR_PA, job.static, job.limit), AIR_PA)


def ashrae_open(job: Job) -> Answer:
    """Twice the net growth."""
    return Answer(2 * job.volume * net_growth(job), None)


def asme_iv(job: Job) -> Answer:
    """Linear in the mean temperature in degrees Fahrenheit, for a plain tank unless charged."""
    mean = ((job.warmth.hot_k if job.mean_k is None else job.mean_k) - 273.15) * 9 / 5 + 32
    if 0.00041 * mean <= 0.0466:
        raise NoAnswer
    charge = AIR_PA if job.charge is None else job.charge
    return Answer(boyle(job.volume * (0.00041 * mean - 0.0466), charge, job.static, job.limit), charge)


def en_12828(job: Job) -> Answer:
    """Growth and a reserve, from a charge over column and vapour to below the relief valve."""
    if job.relief is None:
        raise NoAnswer
    charge = AIR_PA + job.column + max(0.0, saturation(job.warmth.hot_k) - AIR_PA) + 0.3 * BAR
    charge = max(charge, job.charge or 0.0)
    gauge = job.relief - AIR_PA
    end = AIR_PA + (gauge - 0.5 * BAR if gauge <= 5 * BAR else 0.9 * gauge)
    water = job.volume * job.warmth.growth + max(0.005 * job.volume, 3 * LITRE)
    return Answer(boyle(water, charge, charge, end), charge)


def din_4807_5(job: Job) -> Answer:
    """The standard's growth from 10 degC to 60, 70 or 80, else that of water; to eight tenths of the relief valve."""
    if job.relief is None:
        raise NoAnswer
    table = {60: 0.017, 70: 0.023, 80: 0.029}
    cold, hot = (t - 273.15 for t in (job.warmth.cold_k, job.warmth.hot_k))
    growth = job.warmth.growth
    if job.mixture is None and abs(cold - 10) <= 0.05 and any(abs(hot - row) <= 0.05 for row in table):
        growth = table[round(hot)]
    charge = job.static - 0.2 * BAR
    return Answer(boyle(job.volume * growth, charge, job.static, AIR_PA + 0.8 * (job.relief - AIR_PA)), charge)


def uk_4_percent(job: Job) -> Answer:
    """Four per cent of the water, whatever it grows by."""
    charge = job.static if job.charge is None else job.charge
    return Answer(boyle(0.04 * job.volume, charge, job.static, job.limit), charge)


METHODS: dict[str, Callable[[Job], Answer]] = {
    "membrane": membrane,
    "ashrae-diaphragm": ashrae_diaphragm,
    "ashrae-air-water": ashrae_air_water,
    "ashrae-open": ashrae_open,
    "asme-iv": asme_iv,
    "en-12828": en_12828,
    "din-4807-5": din_4807_5,
    "uk-4-percent": uk_4_percent,
}


def tanks(method: str, jobs: list[Job]) -> tuple[float, float | None]:
    """One tank for several waters: each as the method has it, all with the highest charge that one asks for."""
    answers = [METHODS[method](job) for job in jobs]
    charges = {answer.charge for answer in answers if answer.charge is not None}
    if len(charges) > 1:
        answers = [METHODS[method](replace(job, charge=max(charges))) for job in jobs]
    return sum(answer.tank for answer in answers), answers[0].charge
