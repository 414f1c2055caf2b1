"""One tank for as many heaters as it can serve, and the fewest that serve all: where they hang, and their sizes."""

from plumbnet.study.remedies.fewest_tanks.tank_placement import TankPlan, plans

__all__ = ["TankPlan", "plans"]
