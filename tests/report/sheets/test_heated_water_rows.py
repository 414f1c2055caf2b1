"""The heated water as rows: equal pipes together, each water with its sum."""

import plumbnet
from plumbnet.analysis.sizing_sheet import Sheet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.report.sheets.heated_water_rows import heated_water_rows, origin_on_sheet

HOUSE = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  far: tee
  mid: tee
  pump: circulator
  tap: fixture
runs:
  - street -> cv -> heater
  - {path: heater -> far -> mid -> pump, pipe: copper-L 3/4 in, length: 30 ft}
  - {path: pump -> heater.return, volume: 1 gal}
  - far -> tap.hot
  - mid -> tap.cold
"""


def made() -> Sheet:
    report = plumbnet.check(plumbnet.read_bytes(HOUSE.encode(), file="plans/house.yaml"))
    return next(sheets(report, list(report.heaters)))


def test_equal_pipes_of_a_run_stand_in_one_row() -> None:
    rows = list(heated_water_rows(made(), "us"))
    assert [(row[0], row[1].split(".")[0], row[2]) for row in rows] == [
        ("heater", "40 gal", "heater"),
        ("pipes heater -> far -> mid -> pump", "3 x 0", "heater"),
        ("pipe pump -> heater", "1 gal", "heater"),
        ("together", "41", "heater"),
    ]
    assert [row[3].split(":")[0] for row in rows] == ["line 5", "line 12", "line 13", "sum"]


def test_name_of_the_file_is_left_to_the_head() -> None:
    assert origin_on_sheet(made(), "street, line 3 of house.yaml") == "street, line 3"
    assert origin_on_sheet(made(), "line 3 of other.yaml") == "line 3 of other.yaml"
