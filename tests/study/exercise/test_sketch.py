from sketching import as_drawn, chance

from plumbnet.layout.file.loader import read_system
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock.stretch import Spot
from plumbnet.study.exercise.usual_sizes import USUAL


def sketch() -> Sketch:
    return Sketch(chance(1), USUAL["us"])


def test_file_says_what_was_drawn() -> None:
    drawn = sketch()
    street = drawn.part("street", "main", pressure="60 psi")
    heater = drawn.part("heater", "storage_heater", height=20, volume="50 gal", setpoint="120 degF")
    tap = drawn.part("tap", "fixture")
    drawn.run(street, heater)
    drawn.run(heater, f"{tap}.hot", pipe="copper-L 3/4 in", length=30)
    text = as_drawn(drawn, "3 Heron Lane, Lantern Falls")
    assert text == (
        "# Made for training; 3 Heron Lane, Lantern Falls is invented.\n"
        "plumbnet: 1\n"
        "title: '3 Heron Lane, Lantern Falls'\n"
        "\n"
        "parts:\n"
        "  street: {kind: main, pressure: 60 psi}\n"
        "  heater: {kind: storage_heater, volume: 50 gal, setpoint: 120 degF, elevation: 20 ft}\n"
        "  tap: fixture\n"
        "\n"
        "runs:\n"
        "  - street -> heater\n"
        "  - {path: heater -> tap.hot, pipe: copper-L 3/4 in, length: 30 ft}\n"
    )
    assert read_system(text.encode(), file="drawn.yaml").title == "3 Heron Lane, Lantern Falls"


def test_metric_file_says_its_units() -> None:
    drawn = Sketch(chance(1), USUAL["metric"], line=400)
    street = drawn.part("street", "main", pressure=drawn.pressure(400), temperature=drawn.temperature(10))
    heater = drawn.part("heater", "storage_heater", height=-2.5, volume=drawn.volume(120), input=drawn.power(3))
    drawn.run(street, heater, pipe="copper-B 22 mm", length=6)
    assert as_drawn(drawn, "3 Heron Lane").splitlines()[1:] == [
        "plumbnet: 1",
        "title: 3 Heron Lane",
        "units: metric",
        "",
        "parts:",
        "  street: {kind: main, pressure: 400 kPa, temperature: 10 degC}",
        "  heater: {kind: storage_heater, volume: 120 L, input: 3 kW, elevation: -2.5 m}",
        "",
        "runs:",
        "  - {path: street -> heater, pipe: copper-B 22 mm, length: 6 m}",
    ]
    assert [drawn.line_at(height) for height in (0, 6, -2.5)] == [400, 341, 424]


def test_second_part_of_a_name_gets_a_number() -> None:
    drawn = sketch()
    assert [drawn.part("check", "check_valve") for _ in range(3)] == ["check", "check-2", "check-3"]


def test_pressure_falls_by_a_psi_in_two_feet_and_a_bit() -> None:
    drawn = sketch()
    drawn.line = 60
    assert [drawn.line_at(height) for height in (0, 20, -8)] == [60, 51, 63]


def test_what_is_never_likely_never_happens() -> None:
    drawn = sketch()
    assert not any(drawn.likely(0.0) for _ in range(100))
    assert all(drawn.likely(1.0) for _ in range(100))


def test_hanger_is_a_tee_that_may_stand_in_its_places() -> None:
    drawn = sketch()
    tee = drawn.hanger(Spot.FEED, Spot.COLD)
    drawn.run("street", tee, "split", place=Spot.SERVICE)
    assert drawn.hangers == {tee: {Spot.FEED, Spot.COLD}}
    assert drawn.stretches[0].devices == (tee,)


def test_stock_has_what_was_drawn_under_other_names() -> None:
    drawn = sketch()
    drawn.run(drawn.part("street", "main"), drawn.part("house-stop", "valve"), drawn.part("heater", "storage_heater"))
    stock = drawn.stock("3 Heron Lane")
    assert set(stock.parts) == {"street", "valve", "heater"}
    assert stock.stretches[0].stops == ("street", "valve", "heater")
