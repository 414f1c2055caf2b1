"""Acceptances that name many parts."""

from plumbnet.layout.file.loader import read_system

TEXT = """
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  t: tee
  stops: {kind: valve, times: 3}
  taps: {kind: fixture, times: 3}
runs: [street -> t -> stops/each -> taps/each.cold]
accept:
  - {finding: static-above-limit, part: taps/2-3, reason: exempt}
  - {finding: trapped-expansion, parts: [street, stops/each], reason: exempt}
  - {finding: static-above-limit, part: later, reason: exempt}
scenarios:
  more: {change: [{add: {part: later, kind: fixture, run: t -> later.cold}}]}
"""


def test_an_acceptance_is_written_out_for_every_part_it_names() -> None:
    system = read_system(TEXT.strip().encode(), file="f.yaml")
    assert [one.names for one in system.accept] == [
        ("taps/2",),
        ("taps/3",),
        ("street", "stops/1", "stops/2", "stops/3"),
        ("later",),
    ]
    assert [line for line, _ in system.record.accept_at] == [9, 9, 10, 11]
