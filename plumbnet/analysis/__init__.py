"""Ties network, physics and rules into one Report.

`equilibrium` carries zones to the physics, `verdict` judges each heater, `required_tank` finds and tries the tank it
needs, `observations` looks at everything else; `sizing_sheet` and `warmup` work out one heater in full when they are
asked.
"""

from plumbnet.analysis.report import Report, analyse, facts_of

__all__ = ["Report", "analyse", "facts_of"]
