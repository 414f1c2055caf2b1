"""What an analysis knows of a layout: frozen data that findings and reports are written on."""

from plumbnet.rules.facts.all_facts import Facts
from plumbnet.rules.facts.device_facts import HinderedFacts, ReducerFacts, ReliefFacts
from plumbnet.rules.facts.feed_facts import FeedFacts
from plumbnet.rules.facts.fill_facts import FillFacts
from plumbnet.rules.facts.growth_facts import PumpedFacts, ReturnFacts
from plumbnet.rules.facts.heater_answer import HeaterFacts, LockedFacts, RungFacts
from plumbnet.rules.facts.limit_facts import ROUNDING_PA, Basis, Limit, PlaceFacts, TapFacts
from plumbnet.rules.facts.low_facts import LowFacts, Use
from plumbnet.rules.facts.service_facts import TankServiceFacts
from plumbnet.rules.facts.store_facts import StoreFacts
from plumbnet.rules.facts.tank_facts import Charge, Need, TankFacts
from plumbnet.rules.facts.verdict_words import FROM_BEST_TO_WORST, TROUBLED, Verdict
from plumbnet.rules.facts.ways_out import OutletFacts, ShutInFacts

__all__ = [
    "FROM_BEST_TO_WORST",
    "ROUNDING_PA",
    "TROUBLED",
    "Basis",
    "Charge",
    "Facts",
    "FeedFacts",
    "FillFacts",
    "HeaterFacts",
    "HinderedFacts",
    "Limit",
    "LockedFacts",
    "LowFacts",
    "Need",
    "OutletFacts",
    "PlaceFacts",
    "PumpedFacts",
    "ReducerFacts",
    "ReliefFacts",
    "ReturnFacts",
    "RungFacts",
    "ShutInFacts",
    "StoreFacts",
    "TankFacts",
    "TankServiceFacts",
    "TapFacts",
    "Use",
    "Verdict",
]
