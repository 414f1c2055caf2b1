from conftest import layout
from running import Write, run


def test_trace_follows_one_heater_or_all(write: Write) -> None:
    two = layout("street -> tee -> cv -> heater1 -> tap.hot\ntee -> heater2 -> tap2.hot")
    write("two.yaml", two)
    both, one = run("trace", "two.yaml"), run("trace", "two.yaml", "heater2")
    assert "heater1 is a storage heater" in both.stdout
    assert "heater2 is a storage heater" in both.stdout
    assert "heater1 is a storage heater" not in one.stdout
    assert both.exit_code == one.exit_code == 1
