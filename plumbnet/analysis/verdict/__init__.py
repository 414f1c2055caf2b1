"""One heater to its verdict: how high its water comes, what opens first, what becomes of its expansion."""

from plumbnet.analysis.verdict.answerable import demand_few_coupled, demand_few_warm_alike, demand_standing_water
from plumbnet.analysis.verdict.case import Case
from plumbnet.analysis.verdict.judge import judge_of

__all__ = ["Case", "demand_few_coupled", "demand_few_warm_alike", "demand_standing_water", "judge_of"]
