"""Building blocks that layouts of exercises are drawn from, each a part of a building's piping."""

from plumbnet.study.exercise.blocks.feed_pipe import feed
from plumbnet.study.exercise.blocks.heater_plant import shared, single
from plumbnet.study.exercise.blocks.heating_plant import heating
from plumbnet.study.exercise.blocks.roof_cistern import open_vent, roof_service
from plumbnet.study.exercise.blocks.service_pipe import service
from plumbnet.study.exercise.blocks.solar_plant import solar
from plumbnet.study.exercise.blocks.tap_pipes import taps
from plumbnet.study.exercise.blocks.wing_plant import annex

__all__ = ["annex", "feed", "heating", "open_vent", "roof_service", "service", "shared", "single", "solar", "taps"]
