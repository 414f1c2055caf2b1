"""The schematic: a report to symbols, pipes, shaded zones and words on a sheet."""
