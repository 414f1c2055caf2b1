"""A file that is followed as it is saved."""

import threading
from pathlib import Path

import pytest
from touched import HOUSE

import plumbnet
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_board import OneBoard
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.touching.touch_code import UnknownTouch

PATIENCE_S = 30.0


@pytest.fixture
def house(tmp_path: Path) -> FollowedFile[OneBoard]:
    path = tmp_path / "house.yaml"
    path.write_text(HOUSE, encoding="utf-8")
    return FollowedFile(path, lambda: OneBoard(plumbnet.check(path)))


def saved(house: FollowedFile[OneBoard], text: str) -> None:
    assert house.path is not None
    house.path.write_text(text, encoding="utf-8")
    house.look_again()


def test_last_good_state_stays_while_a_mistake_is_told_with_line_and_caret(house: FollowedFile[OneBoard]) -> None:
    before = house.shown
    saved(house, HOUSE.replace("stop: valve", "stop: vlave", 1))
    assert house.shown is before
    assert "house.yaml:6:" in house.mistake
    assert 'unknown kind "vlave"' in house.mistake
    assert "^" in house.mistake
    assert house.seen == 2
    saved(house, HOUSE.replace("62 psi", "70 psi"))
    assert (house.mistake, house.seen) == ("", 3)
    assert house.shown.data["digest"] != before.data["digest"]


def test_file_that_is_gone_is_told_and_first_reading_raises(house: FollowedFile[OneBoard], tmp_path: Path) -> None:
    assert house.path is not None
    house.path.unlink()
    house.look_again()
    assert "house.yaml" in house.mistake
    (tmp_path / "bad.yaml").write_text("plumbnet: 1\n", encoding="utf-8")
    with pytest.raises(LayoutError):
        FollowedFile(tmp_path / "bad.yaml", lambda: OneBoard(plumbnet.check(tmp_path / "bad.yaml")))


def test_save_over_a_file_or_in_its_place_is_noticed_and_no_other_is(house: FollowedFile[OneBoard]) -> None:
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
    while "75" not in str(house.shown.data["touchables"]):
        assert told.acquire(timeout=PATIENCE_S)
    house.stop()
    follower.join(PATIENCE_S)
    assert not follower.is_alive()


def test_files_that_are_shown_besides_are_followed_too(tmp_path: Path) -> None:
    (tmp_path / "below").mkdir()
    named, layout = tmp_path / "named.yaml", tmp_path / "below" / "house.yaml"
    named.write_text("below/house.yaml", encoding="utf-8")
    layout.write_text(HOUSE, encoding="utf-8")

    def read() -> OneBoard:
        board = OneBoard(plumbnet.check(named.parent / named.read_text(encoding="utf-8")))
        board.files = frozenset([str(layout), "no-file.yaml"])
        return board

    followed, told = FollowedFile(named, read), threading.Semaphore(0)
    follower = threading.Thread(target=followed.follow, args=(told.release,), daemon=True)
    follower.start()
    for number in range(100):  # until the watch has begun, a save may go by unseen
        layout.write_text(f"{HOUSE}# {number}\n", encoding="utf-8")
        if told.acquire(timeout=0.1):
            break
    followed.stop()
    follower.join(PATIENCE_S)
    assert followed.seen > 1
    assert not follower.is_alive()


def test_board_that_is_no_file_is_not_followed() -> None:
    house = FollowedFile(None, lambda: OneBoard(plumbnet.check(HOUSE.encode())))
    house.follow(lambda: None)
    assert house.seen == 1


def test_answers_are_worked_out_once(house: FollowedFile[OneBoard]) -> None:
    assert house.shown.answer("1-0") is house.shown.answer("1-0")
    assert house.shown.picture("") is house.shown.picture("")


def test_walk_is_that_of_the_state_and_of_a_heater_there_is(house: FollowedFile[OneBoard]) -> None:
    assert "What stops it on its way out: meter." in house.shown.walk("", "heater")
    with pytest.raises(UnknownTouch, match="no such heater"):
        house.shown.walk("", "boiler")
