"""What heated water does: numbers in, numbers out; knows no parts.

`fluids` has water and glycol, `vessels` what holds water, `equilibrium` where zones settle all at once, `histories`
in which order they come highest, `sizing` the published methods, `warmup` a plant in time.
"""
