from running import run

LAYOUT = """
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  check: check_valve
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, input: 40000 Btu/h, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> check -> heater -> tap.hot
"""


def test_command_writes_each_format_and_its_status_is_that_of_the_check() -> None:
    for output, sign in (("text", "Warm-up of heater"), ("csv", "time (min),heater"), ("json", '"times_s"')):
        done = run("warmup", "-", "heater", "--minutes", "5", "--format", output, given=LAYOUT)
        assert done.exit_code == 1, done.output
        assert sign in done.output


def test_command_without_an_answer_says_why_and_ends_with_status_two() -> None:
    done = run("warmup", "-", "heater", given=LAYOUT.replace("input: 40000 Btu/h, ", ""))
    assert done.exit_code == 2
    assert done.output.startswith("heater lacks an input")
    assert run("warmup", "-", "heatr", given=LAYOUT).exit_code == 2
    assert run("warmup", "-", "heater", "--minutes", "nan", given=LAYOUT).exit_code == 2
