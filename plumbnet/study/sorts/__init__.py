"""The sorts of remedy, each in its own module: what may cure a heater, before it is tried."""
