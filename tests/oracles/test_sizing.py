"""Every sizing method against its formula in plain arithmetic, over random duties."""

import pytest
from conftest import times
from hypothesis import given
from hypothesis import strategies as st

from oracles import sizing_by_hand as by_hand
from oracles.sizing_by_hand import Job
from oracles.warm_water import AIR_PA, Warmth
from plumbnet.layout.model.part import Mixture
from plumbnet.physics.fluids import glycol
from plumbnet.physics.sizing.duty import Duty, MissingInput, OutsideMethod
from plumbnet.physics.sizing.methods import METHODS, size_tank
from plumbnet.physics.vessels.tank import NoTank

PRESSURES = st.floats(1.1e5, 9e5)
RELIEFS = st.floats(2.5e5, 1.2e6)
CLOSE = 1e-9
MIXTURES = st.sampled_from([None, None, Mixture("propylene", 0.3), Mixture("ethylene", 0.45)])


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    """A duty of ordinary size; cold water from 1 degC, hot to 120 degC, with glycol to 99.

    Pressures between which water is to find room lie a pascal apart: less is what rounding makes of it.
    """
    mixture = draw(MIXTURES)
    hottest = 393.15 if mixture is None else 372.15
    static = draw(PRESSURES)
    limit = static + draw(st.floats(-5e4, 0.0) | st.floats(1.0, 6e5))
    charge = draw(st.none() | PRESSURES.filter(lambda charge: abs(charge - limit) >= 1.0))
    warmth = Warmth(
        draw(st.sampled_from([274.15, 283.15, 283.15, 288.15, 300.0])),
        draw(st.sampled_from([333.15, 343.15, 353.15]) | st.floats(290.0, hottest)),
        draw(PRESSURES),
        mixture,
    )
    return Job(
        volume=draw(st.floats(0.01, 20.0)),
        warmth=warmth,
        static=static,
        limit=limit,
        relief=draw(st.sampled_from([None, 3.5e5, 7e5, 1.1e6]) | RELIEFS),
        column=draw(st.floats(0.0, 1.2e5)),
        charge=charge,
        alpha=draw(st.sampled_from([by_hand.STEEL, 1.71e-5])),
        mean_k=draw(st.none() | st.floats(310.0, 400.0)),
    )


def duty(job: Job) -> Duty:
    """The same as the methods take it."""
    warmth, mixture = job.warmth, job.mixture
    own = None if mixture is None else glycol.glycol_growth(mixture.glycol, mixture.share, warmth.cold_k, warmth.hot_k)
    return Duty(
        volume_m3=job.volume,
        cold_k=warmth.cold_k,
        hot_k=warmth.hot_k,
        static_abs_pa=job.static,
        limit_abs_pa=job.limit,
        relief_abs_pa=job.relief,
        charge_abs_pa=job.charge,
        head_pa=job.column,
        mean_k=job.mean_k,
        growth=own,
        vessel_per_k=job.alpha,
        heated_abs_pa=warmth.heated_abs_pa,
        atmosphere_abs_pa=AIR_PA,
    )


@pytest.mark.parametrize("method", sorted(METHODS))
def test_method_comes_to_what_its_formula_says(method: str) -> None:
    sized: list[bool] = []

    @times(1)
    @given(jobs())
    def holds(job: Job) -> None:
        try:
            expected = by_hand.METHODS[method](job)
        except by_hand.NoTank:
            with pytest.raises(NoTank):
                size_tank(method, duty(job))
        except by_hand.NoAnswer:
            with pytest.raises((MissingInput, OutsideMethod)):
                size_tank(method, duty(job))
        else:
            found = size_tank(method, duty(job))
            assert found.tank_m3 == pytest.approx(expected.tank, rel=1e-7, abs=1e-12)
            assert found.charge_abs_pa == (
                None if expected.charge is None else pytest.approx(expected.charge, rel=CLOSE)
            )
            sized.append(True)

    holds()
    assert len(sized) >= 10
