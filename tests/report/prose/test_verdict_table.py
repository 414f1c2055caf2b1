import plumbnet
from plumbnet.report.prose.verdict_table import pressure_in_words, table

TWO = b"""\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  big: {kind: storage_heater, volume: 80 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  small: {kind: tankless_heater, setpoint: 120 degF}
  tap: fixture
  sink: fixture
runs:
  - street -> meter -> split -> big -> tap.hot
  - split -> small -> sink.hot
"""


def test_every_heater_has_a_row_under_its_columns() -> None:
    facts = plumbnet.check(plumbnet.read_bytes(TWO)).facts
    heading, *rows = table(facts, lambda words, _meaning: words)
    assert [row.split()[:2] for row in rows] == [["big", "trapped"], ["small", "on-demand"]]
    assert all(row[: heading.index("verdict")].rstrip() in {"big", "small"} for row in rows)


def test_only_verdicts_are_painted() -> None:
    facts = plumbnet.check(plumbnet.read_bytes(TWO)).facts
    painted = list(table(facts, lambda words, meaning: f"<{meaning}>{words}"))
    assert [line.count("<") for line in painted] == [0, 1, 1]
    assert "<trapped>" in painted[1]


def test_pressure_that_nothing_holds_is_said_so() -> None:
    assert pressure_in_words(None, "us") == "not held"
    assert pressure_in_words(413_685.4, "us") == "60 psi"
