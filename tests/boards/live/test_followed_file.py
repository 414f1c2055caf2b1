"""A file that is followed as it is saved."""

import threading
from pathlib import Path

import pytest
from touched import HOUSE

import plumbnet
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.touching.touch_code import UnknownTouch

PATIENCE_S = 30.0


@pytest.fixture
def house(tmp_path: Path) -> FollowedFile:
    path = tmp_path / "house.yaml"
    path.write_text(HOUSE, encoding="utf-8")
    return FollowedFile(path, lambda: plumbnet.check(path))


def saved(house: FollowedFile, text: str) -> None:
    assert house.path is not None
    house.path.write_text(text, encoding="utf-8")
    house.look_again()


def test_last_good_state_stays_while_a_mistake_is_told_with_line_and_caret(house: FollowedFile) -> None:
    before = house.board
    saved(house, HOUSE.replace("stop: valve", "stop: vlave", 1))
    assert house.board is before
    assert "house.yaml:6:" in house.mistake
    assert 'unknown kind "vlave"' in house.mistake
    assert "^" in house.mistake
    assert house.seen == 2
    saved(house, HOUSE.replace("62 psi", "70 psi"))
    assert (house.mistake, house.seen) == ("", 3)
    assert house.board.data["digest"] != before.data["digest"]


def test_file_that_is_gone_is_told_and_first_reading_raises(house: FollowedFile, tmp_path: Path) -> None:
    assert house.path is not None
    house.path.unlink()
    house.look_again()
    assert "house.yaml" in house.mistake
    (tmp_path / "bad.yaml").write_text("plumbnet: 1\n", encoding="utf-8")
    with pytest.raises(LayoutError):
        FollowedFile(tmp_path / "bad.yaml", lambda: plumbnet.check(tmp_path / "bad.yaml"))


def test_save_is_noticed_written_over_or_put_in_its_place_and_other_files_are_not(house: FollowedFile) -> None:
    assert house.path is not None
    told = threading.Semaphore(0)
    follower = threading.Thread(target=house.follow, args=(told.release,), daemon=True)
    follower.start()
    text = HOUSE
    for number in range(100):  # until the watch has begun, a save may go by unseen
        house.path.write_text(f"{HOUSE}# {number}\n", encoding="utf-8")
        if told.acquire(timeout=0.1):
            break
    (house.path.parent / "other.yaml").write_text(text, encoding="utf-8")
    beside = house.path.with_suffix(".new")
    beside.write_text(HOUSE.replace("62 psi", "75 psi"), encoding="utf-8")
    beside.replace(house.path)
    while "75" not in str(house.board.data["touchables"]):
        assert told.acquire(timeout=PATIENCE_S)
    house.stop()
    follower.join(PATIENCE_S)
    assert not follower.is_alive()


def test_board_that_is_no_file_is_not_followed() -> None:
    house = FollowedFile(None, lambda: plumbnet.check(HOUSE.encode()))
    house.follow(lambda: None)
    assert house.seen == 1


def test_answers_are_worked_out_once(house: FollowedFile) -> None:
    assert house.board.answer("1-0") is house.board.answer("1-0")
    assert house.board.picture("") is house.board.picture("")


def test_walk_is_that_of_the_state_and_of_a_heater_there_is(house: FollowedFile) -> None:
    assert "What stops it on its way out: meter." in house.board.walk("", "heater")
    with pytest.raises(UnknownTouch, match="no such heater"):
        house.board.walk("", "boiler")
