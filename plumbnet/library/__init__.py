"""What notebooks and services call by paths and names; `plumbnet` itself says where each is."""

from plumbnet.library.heater_choice import UnknownHeater, heater_named, only_heater
from plumbnet.library.method_choice import UnknownMethod, demand_method
from plumbnet.library.picture_form import UnknownForm, form_of

__all__ = ["UnknownForm", "UnknownHeater", "UnknownMethod", "demand_method", "form_of", "heater_named", "only_heater"]
