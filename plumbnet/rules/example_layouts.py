"""Small layouts by which findings show what they mean: each says only how its own differ from one of these."""

import re

_MARK = re.compile(r"  # <- [a-z-]+$", re.MULTILINE)
_BLOCK = re.compile(r"^( *[^\s-][^:\n]*:).*\n(?:(?:    |  - ).*\n)*", re.MULTILINE)
"""A line with its key, and what hangs under it: the fields of a part, or all the runs."""


class Example(str):
    """The text of a layout that shows something."""

    __slots__ = ()

    def altered(self, lines: str) -> "Example":
        r"""The layout in which `lines` stand for those of the same key; what is new stands behind the line above it.

        `...` leaves a line as it is; after `runs:` stand all the runs. Marks of findings go, but for those in `lines`.

        >>> crooked = Example("parts:\n  a: tee\n  c: valve  # <- crooked\nruns:\n  - a -> c\n")
        >>> print(crooked.altered("  a: ...\n  b: meter\nruns:\n  - a -> b -> c"), end="")
        parts:
          a: tee
          b: meter
          c: valve
        runs:
          - a -> b -> c
        """
        blocks = _blocks(_MARK.sub("", self))
        keys, at = list(blocks), 0
        for key, block in _blocks(f"{lines}\n").items():
            if key in keys:
                at = keys.index(key)
            else:
                at += 1
                keys.insert(at, key)
            if not block.endswith(": ...\n"):
                blocks[key] = block
        return Example("".join(blocks[key] for key in keys))


def _blocks(text: str) -> dict[str, str]:
    return {block[1]: block[0] for block in _BLOCK.finditer(text)}


PLAIN_HOUSE = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> heater -> tap.hot
""")
"""Open to the street."""

CLOSED_HOUSE = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> meter -> heater -> tap.hot
""")
"""Closed by the check in its meter, with no tank: not sound as it is."""

TANK_HOUSE = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs:
  - street -> meter -> split -> heater -> tap.hot
  - split -> tank
""")
"""Closed by the check in its meter, and held by an expansion tank."""

LETOFF_HOUSE = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 125 psi, temperature: 210 degF}}
  letoff: {kind: expansion_relief, pressure: 75 psi}
  tap: fixture
runs:
  - street -> meter -> split -> heater -> tap.hot
  - split -> letoff
""")
"""Closed by the check in its meter, and held by an expansion relief valve."""

RELIEF_HOUSE = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}
  tap: fixture
runs:
  - street -> heater -> tap.hot
  - heater.relief -> relief
""")
"""Open to the street, its relief valve drawn as a part."""

LOOP_HOUSE = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  far: tee
  pump: circulator
  tap: fixture
runs:
  - street -> split -> heater -> far -> tap.hot
  - far -> pump -> split
""")
"""Open to the street, its hot water driven round."""

CIRCUIT = Example("""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  loop: {kind: filling_loop, fill: 18 psi}
  back: tee
  tank: {kind: expansion_tank, volume: 8 gal, precharge: 18 psi}
  boiler: {kind: boiler, volume: 5 gal, setpoint: 170 degF, relief: {pressure: 50 psi}}
  pump: circulator
  hall: {kind: emitter, volume: 4 gal}
  attic: {kind: emitter, volume: 4 gal, elevation: 25 ft}
runs:
  - street -> loop -> back -> tank
  - boiler -> pump -> hall -> attic -> back -> boiler
""")
"""A heating circuit, filled high enough for its attic."""
