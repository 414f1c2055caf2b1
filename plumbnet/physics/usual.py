"""What heaters and their valves usually are, where a layout does not say. All of it is common practice."""

USUAL_EFFICIENCY = 0.8
"""Share of a burner's input that reaches the water: a gas-fired heater's; an electric one's is 1."""
USUAL_DIFFERENTIAL_K = 6.0
"""Fall below its setpoint at which a thermostat lights the burner again, about 10 degF."""
USUAL_ROOM_K = 293.15
"""Air about a heater, 20 degC; counts only where a loss of heat is asked for."""
USUAL_BLOWDOWN = 0.1
"""Fall below its set, as a share of it, at which a relief valve closes again; no source."""
TEMPERATURE_ELEMENT_K = 372.0389
"""Temperature at which a combined relief valve opens, 210 degF."""
BREAKS_PA = 2_068_427.2
"""Pressure to which a storage heater is tested, 300 psi, gauge. Beyond it, expect it to break."""
