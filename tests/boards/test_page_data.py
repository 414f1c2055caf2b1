"""What the page knows beforehand."""

import json

from touched import EVERY_KIND, HOUSE, states_of

import plumbnet
from plumbnet.boards.page_data import BoardTold, board_data
from plumbnet.study.touching.touch_states import TouchStates


def told(layout: str = HOUSE) -> BoardTold:
    return board_data(states_of(layout))


def test_page_is_told_title_file_rules_and_unit() -> None:
    data = told()
    assert data["title"] == "A house on Mill Lane (invented)"
    assert (data["unit"], data["rules"], data["heaters"]) == ("psi", "general", ["heater"])
    assert len(data["file"]) == len(data["digest"]) == 12


def test_each_option_is_written_as_the_change_that_a_scenario_holds() -> None:
    by_name = {one["name"]: one for one in told()["touchables"]}
    assert by_name["stop"]["options"][0] == {"words": "shut", "sort": "turned", "yaml": ["close: stop"]}
    assert by_name["street"]["numbers"] == [
        {"words": "pressure", "value": 62.0, "unit": "psi", "yaml": ("set: {part: street, pressure: ", " psi}")}
    ]
    tank = by_name["pipe from split to heater"]["options"][-1]["yaml"]
    assert [line.partition(":")[0] for line in tank] == ["insert", "add"]


def test_scenario_of_every_option_and_number_is_read_back() -> None:
    lines = list[list[str]]()
    for one in told(EVERY_KIND)["touchables"]:
        lines += [option["yaml"] for option in one["options"]]
        lines += [[f"{number['yaml'][0]}{number['value']}{number['yaml'][1]}"] for number in one["numbers"]]
    text = EVERY_KIND + "scenarios:\n"
    for number, changes in enumerate(lines):
        text += f"  s{number}:\n    change:\n" + "".join(f"      - {change}\n" for change in changes)
    system = plumbnet.read_bytes(text.encode())
    assert len(system.scenarios) == len(lines)
    assert not system.faulty_scenarios


def test_units_of_the_report_are_those_of_numbers_too() -> None:
    metric = TouchStates(plumbnet.check(HOUSE.encode(), units="metric"))
    data = board_data(metric)
    assert data["unit"] == "kPa"
    assert data["touchables"][0]["numbers"][0]["unit"] == "kPa"


def test_all_of_it_is_json() -> None:
    assert json.loads(json.dumps(told(EVERY_KIND), allow_nan=False))
