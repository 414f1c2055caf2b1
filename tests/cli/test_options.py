from running import OPEN, Write, run


def test_units_of_a_report_can_be_chosen(write: Write) -> None:
    write("open.yaml", OPEN)
    assert "60 psi" in run("check", "open.yaml").stdout
    metric = run("check", "open.yaml", "--units", "metric").stdout
    assert "414 kPa" in metric
    assert "psi" not in metric.split("Local code")[0].replace("80 psi (552 kPa)", "")
    assert "414 kPa" in run("trace", "open.yaml", "--units", "metric").stdout
