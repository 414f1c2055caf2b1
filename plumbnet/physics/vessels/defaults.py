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
HEAT_SOAK_K = 20.0
"""Rise of the water that a flow-through heater holds, from what its hot exchanger gives once the tap is shut, 36 degF.

Own estimate: a copper coil of 1.5 kg to the litre, 150 K hotter than the water, would warm it by 18 K.
"""
HEAT_SOAK_FROM_M3 = 0.004
"""Water from which on that rise is worth a word, 4 L or about a gallon: those of one home hold a litre or two."""
