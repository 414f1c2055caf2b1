"""What is to be sized in, a tank and every step to it out, by each published method."""

from plumbnet.physics.sizing.duty import (
    Duty,
    MissingInput,
    OutsideMethod,
    Sizing,
    Step,
    StepDimension,
    StepNumber,
    step,
)
from plumbnet.physics.sizing.methods import METHODS, size_tank
from plumbnet.physics.sizing.sizing_steps import BOYLE, expansion_steps, growth_steps

__all__ = [
    "BOYLE",
    "METHODS",
    "Duty",
    "MissingInput",
    "OutsideMethod",
    "Sizing",
    "Step",
    "StepDimension",
    "StepNumber",
    "expansion_steps",
    "growth_steps",
    "size_tank",
    "step",
]
