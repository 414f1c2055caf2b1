"""The sorts of remedy, each in its own module: what may cure a heater, before it is tried."""

from plumbnet.study.remedies.remedy_types.devices import bypass, remove_check, renew_reducer
from plumbnet.study.remedies.remedy_types.joined_rooms import join_and_fit
from plumbnet.study.remedies.remedy_types.pairs import open_and_fit
from plumbnet.study.remedies.remedy_types.reducer_screw import set_reducer
from plumbnet.study.remedies.remedy_types.static_pressure_cures import lower, set_and_fit
from plumbnet.study.remedies.remedy_types.tank_connection import add_tank, added, move, tanks_in_words
from plumbnet.study.remedies.remedy_types.tank_cures import enlarge, exchange, recharge, wanted_charge_pa
from plumbnet.study.remedies.remedy_types.valve_cures import open_valve, shut_filling_loop

__all__ = [
    "add_tank",
    "added",
    "bypass",
    "enlarge",
    "exchange",
    "join_and_fit",
    "lower",
    "move",
    "open_and_fit",
    "open_valve",
    "recharge",
    "remove_check",
    "renew_reducer",
    "set_and_fit",
    "set_reducer",
    "shut_filling_loop",
    "tanks_in_words",
    "wanted_charge_pa",
]
