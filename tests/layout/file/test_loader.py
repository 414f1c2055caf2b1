"""Layout text to a system: the promises of the format. Every message has its case in tests/faults."""

import hashlib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from telling import told_of

from plumbnet.layout.file import loader
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.circuit import Circuit
from plumbnet.layout.model.part import KINDS, Free, OneWay
from plumbnet.layout.model.runs import MOST_PIPES
from plumbnet.layout.model.system import End, System
from plumbnet.layout.yaml.fault import MOST_SHOWN, LayoutError
from plumbnet.layout.yaml.yaml_composer import MAX_FAULTS

BAKERY = """\
plumbnet: 1
title: Bakery on the corner
units: us
rules: general

parts:
  street:  {kind: main, pressure: 62 psi, temperature: 50 degF}
  meter:   {kind: meter, check: true}
  stop:    valve
  split:   tee
  heater:
    kind: storage_heater
    volume: 50 gal
    setpoint: 140 °F
    input: 40000 Btu/h
    relief: {pressure: 150 psi, temperature: 210 degF, capacity: 105000 Btu/h}
  tank:    {kind: expansion_tank, volume: 4.5 gal, precharge: 62 psi}
  sink:    {kind: fixture, elevation: 9 ft}

runs:
  - street -> meter -> stop -> split -> heater -> sink.hot
  - split -> tank
  - path: split -> sink.cold
    pipe: copper-L 3/4 in
    length: 30 ft

scenarios:
  stop-shut:
    note: The stop is left shut after a repair.
    change:
      - close: stop
"""

GALLON = 0.003785411784
INSIDE_M = 0.785 * 0.0254  # of a copper tube, type L, 3/4 in: ASTM B88


def read(text: str) -> System:
    return read_system(text.encode(), file="f.yaml")


def faults(text: str | bytes) -> str:
    return str(told_of(text if isinstance(text, bytes) else text.encode(), file="f.yaml"))


def small(parts: str, *runs: str, top: str = "") -> str:
    return f"plumbnet: 1\n{top}\nparts: {parts}\nruns:\n" + "".join(f"- {run}\n" for run in runs)


def joined(of: System) -> set[tuple[End, End]]:
    return {pipe.ends for pipe in of.pipes}


def test_bakery_is_read_as_it_is_written() -> None:
    bakery = read(BAKERY)
    assert (bakery.title, bakery.units, bakery.rules) == ("Bakery on the corner", "us", "general")
    assert list(bakery.parts) == ["street", "meter", "stop", "split", "heater", "heater/relief", "tank", "sink"]
    heat = bakery.parts["heater"].heat()
    assert heat is not None
    assert (heat.inlet, heat.outlet) == ("cold", "hot")
    assert heat.volume_m3 == pytest.approx(50 * GALLON)
    assert heat.hot_k == pytest.approx(333.15)
    assert heat.input_w == pytest.approx(11722.84, rel=1e-6)
    assert bakery.parts["sink"].elevation_m == pytest.approx(2.7432)
    assert list(bakery.scenarios) == ["stop-shut"]
    assert bakery.scenarios["stop-shut"].note == "The stop is left shut after a repair."


def test_runs_of_the_bakery_join_inlets_and_outlets() -> None:
    assert joined(read(BAKERY)) == {
        (End("heater", "relief"), End("heater/relief", "in")),
        (End("street", "out"), End("meter", "in")),
        (End("meter", "out"), End("stop", "in")),
        (End("stop", "out"), End("split", "joint")),
        (End("split", "joint"), End("heater", "cold")),
        (End("heater", "hot"), End("sink", "hot")),
        (End("split", "joint"), End("tank", "in")),
        (End("split", "joint"), End("sink", "cold")),
    }


def test_record_holds_the_file_its_sum_and_its_lines() -> None:
    record = read(BAKERY).record
    assert record.file == "f.yaml"
    assert record.sha256 == hashlib.sha256(BAKERY.encode()).hexdigest()
    assert record.lines["heater"] == 11
    assert record.rules_at == dict.fromkeys(Circuit, (4, 8))
    assert record.text == BAKERY


def test_sum_is_that_of_the_bytes_with_their_byte_order_mark() -> None:
    data = b"\xef\xbb\xbf" + BAKERY.encode()
    assert read_system(data, file="f").record.sha256 == hashlib.sha256(data).hexdigest()


def test_written_fields_are_kept_for_each_part() -> None:
    written = read(BAKERY).written
    assert written["stop"] == {"kind": "valve"}
    assert written["tank"] == {"kind": "expansion_tank", "volume": "4.5 gal", "precharge": "62 psi"}
    assert "heater/relief" not in written


def test_pipe_holds_the_water_of_its_tube() -> None:
    (pipe,) = [pipe for pipe in read(BAKERY).pipes if pipe.tube]
    assert pipe.length_m == pytest.approx(9.144)
    assert pipe.volume_m3 == pytest.approx(9.144 * 3.14159265 / 4 * INSIDE_M**2, rel=1e-3)


@pytest.mark.parametrize("given_as", ["volume: 6", "volume: 6 L", "volume: 0.006 m3"])
def test_water_and_length_of_a_run_are_shared_over_its_pipes(given_as: str) -> None:
    run = f"{{path: m -> v -> w -> t, {given_as}, length: 9}}"
    pipes = read(
        small("{m: {kind: main, pressure: 4 bar}, v: valve, w: valve, t: tee}", run, top="units: metric")
    ).pipes
    assert [pipe.volume_m3 for pipe in pipes] == pytest.approx([0.002] * 3)
    assert [pipe.length_m for pipe in pipes] == pytest.approx([3.0] * 3)


def test_water_that_is_written_goes_before_that_of_the_tube() -> None:
    run = "{path: m -> t, pipe: copper-L 3/4 in, length: 30 ft, volume: 1 gal}"
    (pipe,) = read(small("{m: {kind: main, pressure: 60}, t: tee}", run)).pipes
    assert pipe.volume_m3 == pytest.approx(GALLON)
    assert pipe.tube == "copper-L 3/4 in"


def test_run_as_text_holds_no_water_that_is_known() -> None:
    (pipe,) = read(small("{m: {kind: main, pressure: 60}, t: tee}", "m -> t")).pipes
    assert (pipe.volume_m3, pipe.length_m, pipe.tube) == (0.0, None, None)


def test_reversed_check_valve_is_entered_at_its_outlet() -> None:
    reversed_valve = read(small("{m: {kind: main, pressure: 60}, cv: check_valve, t: tee}", "m -> cv.out -> t"))
    assert joined(reversed_valve) == {(End("m", "out"), End("cv", "out")), (End("cv", "in"), End("t", "joint"))}
    assert list(reversed_valve.parts["cv"].passages()) == [OneWay("in", "out")]


def test_device_has_the_ports_its_author_wrote() -> None:
    device = "{kind: device, ports: [left, right, drain], passages: [{one_way: [left, right]}, {free: [right, drain]}]}"
    drawn = read(
        small(f"{{m: {{kind: main, pressure: 60}}, box: {device}, t: tee}}", "m -> box -> t", "box.drain -> t")
    )
    assert joined(drawn) == {
        (End("m", "out"), End("box", "left")),
        (End("box", "right"), End("t", "joint")),
        (End("box", "drain"), End("t", "joint")),
    }
    assert list(drawn.parts["box"].passages()) == [OneWay("left", "right"), Free("right", "drain")]


def test_quantities_carry_their_own_unit_whatever_the_file_says() -> None:
    for units in ("us", "metric"):
        drawn = read(
            small("{m: {kind: main, pressure: 4.3 bar, elevation: 12 in}, t: tee}", "m -> t", top=f"units: {units}")
        )
        assert [outlet.opens_pa for outlet in drawn.parts["m"].outlets()] == pytest.approx([430_000])
        assert drawn.parts["m"].elevation_m == pytest.approx(0.3048)


def test_tank_sizes_are_sorted() -> None:
    drawn = read(small("{m: {kind: main, pressure: 60}, t: tee}", "m -> t", top="tank_sizes: [4.4 gal, 2 gal]"))
    assert drawn.tank_sizes_m3 == pytest.approx((2 * GALLON, 4.4 * GALLON))


def test_relief_may_be_a_part_of_its_own() -> None:
    heater = "{kind: storage_heater, volume: 50, setpoint: 140}"
    parts = f"{{m: {{kind: main, pressure: 60}}, h: {heater}, r: {{kind: relief_valve, pressure: 150}}}}"
    assert (End("h", "relief"), End("r", "in")) in joined(read(small(parts, "m -> h", "h.relief -> r")))


def test_relief_cannot_be_in_both_places() -> None:
    heater = "{kind: storage_heater, volume: 50, setpoint: 140, relief: {pressure: 150}}"
    parts = f"{{m: {{kind: main, pressure: 60}}, h: {heater}, r: {{kind: relief_valve, pressure: 150}}}}"
    twice = faults(small(parts, "m -> h", "h.relief -> r"))
    assert "h.relief belongs to the relief" in twice


def test_faulty_part_is_told_once_and_not_again_by_its_runs() -> None:
    text = small("{m: {kind: main, pressure: 60}, v: vlave, t: tee}", "m -> v -> t", "v.out -> t")
    assert faults(text).count("f.yaml:") == 1


def test_faulty_run_still_mentions_its_parts() -> None:
    text = small("{m: {kind: main, pressure: 60}, t: tee}", "{path: m -> t, lenght: 3}")
    assert faults(text).count("f.yaml:") == 1


def test_faults_at_the_top_do_not_hide_those_below() -> None:
    said = faults(small("{m: {kind: mian}, t: tee}", "m -> t", "t -> u", top="titel: Bakery"))
    assert [line.split(": ")[0] for line in said.splitlines() if line.startswith("f.yaml")] == [
        "f.yaml:2:1",
        "f.yaml:3:19",
        "f.yaml:6:8",
    ]


def test_faults_of_scenarios_are_all_told() -> None:
    top = "scenarios: {a: {change: [{close: x}]}, b: {change: [{draw: m}]}}"
    said = faults(small("{m: {kind: main, pressure: 60}, t: tee}", "m -> t", top=top))
    assert 'no part is called "x"; ' in said
    assert "m is a main; water is drawn at a fixture" in said


def test_scenario_is_tried_on_the_layout_and_leaves_it_as_it_is() -> None:
    assert read(BAKERY).parts["stop"].is_valve()


def test_scenario_may_have_any_name() -> None:
    top = "scenarios: {function-after: {chnge: []}}"
    said = faults(small("{m: {kind: main, pressure: 60}, t: tee}", "m -> t", top=top))
    first = said.splitlines()[0]
    assert first.startswith("f.yaml:2:30: a scenario ")
    assert first.endswith('"chnge": did you mean "change"?')


def test_nearest_name_is_looked_for_only_for_the_faults_that_are_shown() -> None:
    parts = ", ".join(f"heater{n}: tee" for n in range(100))
    runs = [f"heater{n % 100} -> heatr-{n}" for n in range(2_000)]
    with pytest.raises(LayoutError) as caught:
        read(small(f"{{{parts}}}", *runs))
    hints = [fault.hint for fault in caught.value.faults]
    assert len(hints) == MAX_FAULTS + 1
    assert all("did you mean" in hint for hint in hints[:MOST_SHOWN])
    assert not any("did you mean" in hint for hint in hints[MOST_SHOWN:])


def test_reading_stops_where_faults_are_too_many() -> None:
    with pytest.raises(LayoutError) as caught:
        read(small("{a: tee}", " -> ".join(["a"] * 9_000)))
    assert len(caught.value.faults) == MAX_FAULTS + 1
    assert any(fault.text == "reading stops here" for fault in caught.value.faults)


def test_run_of_too_many_pipes_is_refused_in_one_sentence() -> None:
    said = faults(small("{a: tee, b: tee}", "a -> b -> " * 5_001 + "a"))
    assert said.startswith("f.yaml:5:3: this run has more than 10,000 pipes; write it as several\n")


def test_layout_of_too_many_pipes_is_refused_where_they_become_too_many(monkeypatch: pytest.MonkeyPatch) -> None:
    assert MOST_PIPES == 250_000
    monkeypatch.setattr(loader, "MOST_PIPES", 2_500)
    runs = ["a -> b -> " * 50 + "a"] * 26
    assert len(read(small("{a: tee, b: tee}", *runs[:25])).pipes) == 2_500
    said = faults(small("{a: tee, b: tee}", *runs))
    assert said.startswith("f.yaml:30:3: up to here the runs have more than 2,500 pipes; split the layout\n")


def test_fault_deep_in_a_long_run_is_found_at_its_place() -> None:
    path = "t -> v -> t -> w -> nowhere -> t"
    said = faults(small("{t: tee, v: valve, w: valve}", path))
    place = f"f.yaml:5:{3 + path.index('nowhere')}: "
    assert said.startswith(f'{place}no part is called "nowhere"; ')


SCALARS = (
    st.none()
    | st.booleans()
    | st.integers(-3, 3)
    | st.floats()
    | st.sampled_from(
        [
            "",
            "tee",
            "main",
            "valve",
            "device",
            "heater",
            "60 psi",
            "3 gal",
            "a -> b",
            "a.in -> b",
            "->",
            "\x1b[2J",
            "us",
        ]
    )
)
FIELDS = ["kind", "volume", "pressure", "set", "ports", "passages", "free", "relief", "path", "pipe", "length", "state"]
VALUES = st.recursive(
    SCALARS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(FIELDS), inner, max_size=3),
    max_leaves=6,
)
CHANGES = st.dictionaries(
    st.sampled_from(["close", "open", "remove", "insert", "add", "set", "fail", "draw"]),
    SCALARS
    | st.fixed_dictionaries(
        {},
        optional={
            "part": SCALARS,
            "kind": st.sampled_from(sorted(KINDS)) | SCALARS,
            "between": st.lists(st.sampled_from(["a", "b", "c"]), max_size=3),
            "run": st.sampled_from(["a -> n", "n -> b", "n", "n -> n"]),
            "how": SCALARS,
            "volume": SCALARS,
        },
    ),
    max_size=2,
)
LAYOUTS = st.fixed_dictionaries(
    {
        "plumbnet": st.just(1),
        "parts": st.dictionaries(st.sampled_from(["a", "b", "c"]), VALUES | st.sampled_from(sorted(KINDS))) | VALUES,
        "runs": st.lists(VALUES | st.sampled_from(["a -> b", "b -> c", "c -> a"])) | VALUES,
    },
    optional={
        "units": VALUES,
        "tank_sizes": VALUES,
        "scenarios": st.dictionaries(st.just("s"), st.fixed_dictionaries({"change": st.lists(CHANGES, max_size=3)})),
    },
)


def flow(value: object) -> str:
    """A value in YAML's flow style."""
    match value:
        case dict():
            return "{" + ", ".join(f"{key}: {flow(inner)}" for key, inner in value.items()) + "}"
        case list():
            return "[" + ", ".join(map(flow, value)) + "]"
        case bool():
            return str(value).lower()
        case None:
            return "~"
        case str():
            return '"' + value.replace("\x1b", "\\e") + '"'
        case _:
            return {"nan": ".nan", "inf": ".inf", "-inf": "-.inf"}.get(str(value), str(value))


def test_units_may_be_metric_with_pressures_in_bar() -> None:
    parts = "{m: {kind: main, pressure: 4.3, temperature: 10, elevation: 2}, t: {kind: storage_tank, volume: 200}}"
    drawn = read(f"plumbnet: 1\nunits: metric-bar\nparts: {parts}\nruns: [m -> t]")
    assert drawn.units == "metric-bar"
    assert next(iter(drawn.parts["m"].outlets())).opens_pa == pytest.approx(430_000)
    assert drawn.parts["m"].elevation_m == 2.0
    assert list(drawn.parts["t"].contents()) == [("in", 0.2)]


@settings(max_examples=200, deadline=None)
@given(LAYOUTS)
def test_no_layout_crashes_the_reader_and_every_fault_is_in_our_words(layout: dict[str, object]) -> None:
    said = said_of(flow(layout))
    assert all(line.isprintable() for line in said.split("\n"))
    for foreign in ("Input should", "Field required", "Extra inputs", "validation", "NoneType", "<class", "{'"):
        assert foreign not in said


def said_of(text: str) -> str:
    try:
        read(text)
    except LayoutError as error:
        return str(error)
    return ""
