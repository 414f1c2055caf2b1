"""Where numbers come from: lines of the file, changes to it, defaults, the tube table."""

import plumbnet
from plumbnet.analysis.sizing_sheet.provenance import Provenance
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import End, Pipe, System
from plumbnet.network.loops.heated_volume import Piece

TEXT = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  heater:
    kind: indirect_heater
    volume: 50 gal
    setpoint: 140 degF
    relief:
      pressure: 150 psi
  far: tee
runs:
  - street -> heater
  - path: heater -> far
    pipe: copper-L 3/4 in
    length: 30 ft
"""


def read(text: str = TEXT) -> System:
    return plumbnet.read_bytes(text.encode(), file="plans/upper/house.yaml")


def test_value_names_its_own_line_and_the_file_without_its_folder() -> None:
    origins = Provenance(read(), "us")
    assert origins.field("heater", "volume") == "line 6 of house.yaml"
    assert origins.field("heater/relief", "pressure") == "line 9 of house.yaml"


def test_relief_written_as_a_pressure_alone_stands_in_its_line() -> None:
    text = TEXT.replace("    relief:\n      pressure: 150 psi\n", "    relief: 150 psi\n")
    origins = Provenance(read(text), "us")
    assert origins.field("heater/relief", "pressure") == "line 8 of house.yaml"
    assert origins.field("heater/relief", "temperature") == "default: it relieves pressure only"


def test_default_says_what_was_taken() -> None:
    origins = Provenance(read(), "us")
    assert origins.field("street", "temperature") == "default: it delivers water at 10 °C (50 °F)"
    assert origins.field("heater/relief", "temperature") == "default: it relieves pressure only"
    assert origins.field("heater", "coil_volume") == "default: it has a coil of 5 L (1.3 gal)"
    assert origins.field("far", "elevation") == "default: height above the layout's datum"


def test_first_field_that_the_kind_knows_counts() -> None:
    origins = Provenance(read(), "us")
    assert origins.field("street", "cut_out", "pressure") == "line 3 of house.yaml"
    assert origins.field("street", "cut_out") == "line 3 of house.yaml"


def test_changed_value_is_no_line_of_the_file() -> None:
    change = Change.model_validate({"set": {"part": "heater", "volume": "60 gal"}})
    origins = Provenance(with_changes(read(), [change]), "us")
    assert origins.field("heater", "volume") == "a change to house.yaml"
    assert origins.field("heater", "setpoint") == "line 7 of house.yaml"


def test_field_that_a_change_brought_has_no_line() -> None:
    change = Change.model_validate({"set": {"part": "heater", "elevation": "3 m"}})
    assert Provenance(with_changes(read(), [change]), "us").field("heater", "elevation") == "a change to house.yaml"


def test_default_without_words_of_its_own_is_told_by_what_the_field_says() -> None:
    origins = Provenance(read(), "us")
    assert origins.field("street", "highest") == "default: it stands no higher at night"
    assert origins.field("heater", "sizing") == "default: method by which its expansion tank is sized"


def test_pieces_are_named_by_part_side_and_pipe() -> None:
    origins = Provenance(read(), "us")
    assert origins.piece(Piece("heater.cold", 0, 0.1)) == ("heater", "line 6 of house.yaml")
    assert origins.piece(Piece("heater.coil_in", 0, 0.1))[0] == "heater, coil"
    name, origin = origins.piece(Piece("pipe 2", 0, 0.1))
    assert name == "pipe heater -> far"
    assert origin.startswith("line 13 of house.yaml: 30 ft at 0.0251419 gal/ft, copper-L 3/4 in by ASTM B88 type L")


def test_tube_table_speaks_the_units_of_the_report() -> None:
    origin = Provenance(read(), "metric").pipe(read().pipes[2])
    assert ": 9.144 m at 0.312246 L/m, copper-L" in origin


def test_volume_that_was_written_needs_no_tube() -> None:
    system = read(TEXT.replace("length: 30 ft", "volume: 1 gal"))
    assert Provenance(system, "us").pipe(system.pipes[2]) == "line 13 of house.yaml"


def test_pipe_that_a_change_brought_has_no_line() -> None:
    pipe = Pipe(End("heater", "hot"), End("far", "in"))
    assert Provenance(read(), "us").pipe(pipe) == "a change to house.yaml"


def test_column_of_water_gives_its_height_and_its_weight() -> None:
    origin = Provenance(read(), "metric").column("roof", "cellar", -98066.5)
    assert origin == "computed: 10 m of water at 9.80665 kPa/m, from roof down to cellar"
