"""What a remedy asks of the installer has an order."""

from plumbnet.study.remedies.candidate import Effort


def test_least_work_comes_first() -> None:
    assert [effort.name for effort in sorted(Effort)] == [
        "RECHARGE",
        "SET_REDUCER",
        "OPEN_VALVE",
        "SHUT_FILLING_LOOP",
        "RENEW_REDUCER",
        "EXCHANGE_TANK",
        "ENLARGE",
        "MOVE",
        "ADD",
        "EXCHANGE_DEVICE",
        "REMOVE_CHECK",
        "LOWER_PRESSURE",
        "PAIR",
    ]
