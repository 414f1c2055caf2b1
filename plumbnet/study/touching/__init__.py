"""A layout to touch: what of it may be otherwise, states of it as short codes, and the report on each state."""

from plumbnet.study.touching.state_choice import FEW_STATES, HeldStates, held_states
from plumbnet.study.touching.touch_code import Touch, UnknownTouch, code_of, touches_of
from plumbnet.study.touching.touch_states import TouchStates
from plumbnet.study.touching.touchable_things import Touchable, TouchNumber, TouchOption, touchables

__all__ = [
    "FEW_STATES",
    "HeldStates",
    "Touch",
    "TouchNumber",
    "TouchOption",
    "TouchStates",
    "Touchable",
    "UnknownTouch",
    "code_of",
    "held_states",
    "touchables",
    "touches_of",
]
