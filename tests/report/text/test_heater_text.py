"""The report in text: what is told of each heater under which label; the words are in systems/ and golden/check.out."""

import re

from conftest import layout, system

import plumbnet
from plumbnet.report.prose.word_colours import PAINTS
from plumbnet.report.text.findings_text import WIDTH
from plumbnet.report.text.heater_text import CAUTION, report_text

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def text(runs: str, **parts: str) -> str:
    return report_text(plumbnet.check(system(runs, **parts)))


def said(told: str, label: str) -> str:
    """What stands beside a label, as one line."""
    lines = told.splitlines()
    start = next(number for number, line in enumerate(lines) if line.startswith(f"  {label}"))
    more = []
    for line in lines[start + 1 :]:
        if not line.startswith(" " * 18):
            break
        more.append(line.strip())
    return " ".join([lines[start][18:].strip(), *more])


def test_report_opens_with_the_file_and_the_rules_and_ends_with_the_caution() -> None:
    told = text(CLOSED)
    assert told.startswith("drawn.yaml\nrules: General practice ")
    assert "\n\nheater: TRAPPED  (" in told
    assert " ".join(told.split()).endswith(CAUTION)
    assert told.endswith("\n")


def test_title_stands_beside_the_file_with_nothing_hidden_in_it() -> None:
    titled = f'title: "Kiosk \\e[2J"\n{layout(CLOSED)}'
    told = report_text(plumbnet.check(plumbnet.read_bytes(titled.encode(), file="kiosk.yaml")))
    assert told.startswith("kiosk.yaml: Kiosk ")
    assert "\x1b" not in told


def test_trapped_heater_is_told_why_how_much_and_what_it_needs() -> None:
    told = text(CLOSED)
    assert " is stopped by cv (" in said(told, "because")
    assert "street and tee" in said(told, "because")
    assert said(told, "pressure").split("; ") == ["static 60 psi", "limit 80 psi (fixture tap)"]
    assert said(told, "expansion").endswith("grows by 0.839 gal")
    assert said(told, "opens first").endswith("past it relief at 150 psi")
    assert "5 gal (at least 3.97 gal)" in said(told, "needs")
    assert "charged to 60 psi" in said(told, "needs")
    assert "  settles" not in told


def test_pressure_past_the_limit_and_what_is_short_are_told() -> None:
    told = text(f"{CLOSED}\ntee -> tank", tank="volume: 2 gal")
    assert said(told, "settles").startswith("at 114 psi ")
    assert said(told, "settles").endswith("past the limit")
    assert said(told, "short").startswith("0.417 gal of the growth ")
    assert " in tank " in said(told, "short")


def test_controlled_heater_is_told_what_takes_its_water() -> None:
    told = text(f"{CLOSED}\ntee -> tank", tank="volume: 5 gal")
    assert said(told, "because").endswith("the growth below the limit")
    assert "; tank takes up " in said(told, "because")
    assert said(told, "settles") == "at 75.1 psi when all is hot"
    told = text(f"{CLOSED}\ntee -> spill", spill="pressure: 75 psi")
    assert "; spill lets the growth off" in said(told, "because")
    told = text(f"{CLOSED}\ntee -> spill\ntee -> tank", spill="pressure: 75 psi", tank="volume: 2 gal")
    assert "; tank takes up the growth and" in said(told, "because")
    assert " spill lets the rest off" in said(told, "because")


def test_expansion_relief_that_need_not_open_is_given_no_credit() -> None:
    told = text(f"{CLOSED}\ntee -> spill\ntee -> tank", spill="pressure: 79 psi", tank="volume: 8 gal")
    assert said(told, "because").endswith("the growth below the limit")
    assert "spill" not in said(told, "because")


def test_water_that_does_not_grow_needs_nothing_to_take_it() -> None:
    told = text(CLOSED, heater="setpoint: 45 degF")
    assert "; nothing need take its water" in said(told, "because")


def test_open_heater_is_told_the_way_and_what_would_close_it() -> None:
    told = text("street -> valve -> heater -> tap.hot\nheater.relief -> relief")
    assert said(told, "because").endswith("street: heater > valve > street")
    assert said(told, "closes if shut") == "valve"
    assert "  settles" not in told


def test_open_heater_is_told_where_it_settles_only_where_the_pressure_climbs() -> None:
    runs = "street -> prv -> tee -> heater -> tap.hot\nheater.relief -> relief"
    assert said(text(runs, prv="bypass: true"), "settles") == "at 60 psi when all is hot"
    tanked = text(f"{runs}\ntee -> tank", prv="bypass: true", tank="volume: 20 gal, precharge: 50 psi")
    assert said(tanked, "settles") == "at 52.8 psi when all is hot"


def test_sealed_heater_is_a_danger() -> None:
    told = text("street -> cv -> heater -> tap.hot")
    assert "heater: SEALED" in told
    assert "no relief valve can open: DANGER" in said(told, "because")
    assert said(told, "opens first") == "nothing, at any pressure"


def test_heater_on_demand_is_told_so() -> None:
    told = text("street -> cv -> tankless -> tap.hot")
    assert "but it fires only while water runs" in said(told, "because")


def test_bypass_above_the_limit_is_told_as_too_late() -> None:
    told = text(
        "street -> prv -> heater -> tap.hot\nheater.relief -> relief", street="pressure: 95 psi", prv="bypass: true"
    )
    assert said(told, "because").endswith("street opens only above 95 psi")


def test_kept_pressure_and_missing_water_are_told() -> None:
    told = text("street -> valve -> heater -> tap.hot\nheater.relief -> relief", valve="state: shut")
    assert said(told, "pressure").startswith("static 60 psi, kept from before")
    told = text("tee -> heater -> tap.hot\nheater.relief -> relief\nstreet -> tap2.cold")
    assert said(told, "pressure").startswith("no supply reaches it; limit 80 psi")
    assert said(told, "because").startswith("no way leads to a main")


def test_street_at_its_highest_is_told_where_the_static_pressure_rests_on_it() -> None:
    told = text("street -> heater -> tap.hot", street="highest: 75 psi")
    assert said(told, "pressure").startswith("static 75 psi, the street at")
    assert "highest" in said(told, "pressure")
    told = text("street -> prv -> heater -> tap.hot", street="highest: 75 psi")
    assert said(told, "pressure").split("; ") == ["static 50 psi", "limit 80 psi (fixture tap)"]


def test_limit_elsewhere_is_told_as_it_reads_there() -> None:
    told = text(CLOSED, tap="elevation: 30 ft")
    assert said(told, "pressure").endswith("limit 93 psi (fixture tap: 80 psi there)")


def test_heaters_that_share_are_told() -> None:
    row = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot"
    assert said(text(row), "expansion").endswith("; together with heater2 by 1.68 gal")
    loop = "street -> cv -> tee -> heater1 -> tee2 -> tap.hot\ntee -> heater2 -> tee2\ntee2 -> pump -> tee"
    assert said(text(loop), "expansion").endswith("; heater2 warms the same water")
    assert said(text(loop), "loops").startswith("pump drives water through ")


def test_table_comes_first_from_three_heaters_on() -> None:
    pair = "street -> cv -> tee -> heater1 -> tap1.hot\ntee -> tankless -> tap2.hot"
    assert "settles at" not in text(pair)
    rows = [
        line.split("  ")
        for line in text(
            f"{pair}\nstreet2 -> heater2 -> tap3.hot", street2="kind: main, pressure: 50 psi"
        ).splitlines()[3:7]
    ]
    cells = [[cell.strip() for cell in row if cell.strip()] for row in rows]
    assert cells[0] == ["heater", "verdict", "static", "limit", "settles at", "grows by", "opens first"]
    assert cells[1] == ["heater1", "sealed", "60 psi", "80 psi", "not held", "0.839 gal", "nothing"]
    assert cells[2][:5] == ["tankless", "on-demand", "60 psi", "80 psi", "not held"]
    assert cells[3] == ["heater2", "open", "50 psi", "80 psi", "50 psi", "0.839 gal", "street2 at 50 psi"]


def test_nothing_to_heat_and_nothing_to_find() -> None:
    told = text("street -> tap.cold")
    assert "Nothing in this layout heats water." in told
    assert "No findings." in told


def test_many_findings_that_one_cure_mends_are_told_together_and_each_by_its_name() -> None:
    heights = {f"tap{number}": f"elevation: {150 + 10 * number} ft" for number in range(1, 5)}
    runs = "street -> tee -> tap.cold\n" + "\n".join(f"tee -> {name}.cold" for name in heights)
    told = text(runs, **heights)
    assert told.count("error: tap-without-water") == 1
    assert re.findall(r"\n    no water comes to (tap\d)", told) == ["tap1"]
    assert "adds at least 30.4 psi" in told
    of_more = told.partition("The same of 3 more:\n")[2]
    assert re.findall(r"line (\d+): no water comes to (tap\d)", of_more) == [
        ("14", "tap2"),
        ("17", "tap3"),
        ("20", "tap4"),
    ]
    one = "\n".join(line for line in runs.splitlines() if not re.search("tap[2-4]", line))
    assert "The same of" not in text(one, **heights)


def test_findings_stand_with_clause_and_line_and_say_where_it_is_from_memory() -> None:
    told = report_text(plumbnet.check(system("street -> cv -> tee -> heater -> tap.hot"), rules="ipc-2021"))
    assert "Findings:\n  error: relief-missing, line " in told or "Findings:\n  error: sealed-heater, line " in told
    flat = " ".join(told.split())
    assert "; from memory: " in flat
    assert "[common practice" not in flat


def test_lines_that_come_behind_the_findings() -> None:
    told = report_text(plumbnet.check(system(CLOSED)), more=["One more."])
    assert "\n\nOne more.\n\nAssumed " in told


def test_no_line_is_wider_than_the_page() -> None:
    long = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief\n" + "\n".join(
        f"tee -> tap{number}.cold" for number in range(40)
    )
    assert max(map(len, text(long).splitlines())) <= WIDTH


def test_paint_is_asked_for_verdicts_and_severities_alone() -> None:
    asked: list[tuple[str, str]] = []

    def paint(words: str, meaning: str) -> str:
        asked.append((words, meaning))
        return f"<{words}>"

    told = report_text(plumbnet.check(system(CLOSED)), paint=paint)
    assert ("TRAPPED", "trapped") in asked
    assert ("error", "error") in asked
    assert "heater: <TRAPPED>  (" in told
    assert {meaning for _, meaning in asked} <= set(PAINTS)


def test_what_the_calculation_takes_for_granted_stands_among_what_is_assumed() -> None:
    told = text("street -> booster -> tee -> heater -> tap.hot\ntee -> tank")
    assumed = " ".join(told.partition("Assumed where the file says nothing:")[2].split())
    assert "stands still for growth: booster" in assumed
    assert "it is warmed slowly: tank" in assumed
