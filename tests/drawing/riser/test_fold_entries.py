from tall_buildings import tall, tower

from plumbnet.drawing.riser.fold_entries import FoldEntry, fold_entries, said_of_fold


def test_folds_are_told_with_all_their_members() -> None:
    building = tall(tower(storeys=5, shafts=3))
    branch, shafts = fold_entries(building.structure, building.folding)
    assert (branch.letter, branch.count, branch.shown) == ("A", 15, "flat1a")
    assert branch.names == "flat1a ... flat5c"
    assert len(branch.members) == 15
    assert (shafts.letter, shafts.count) == ("", 3)
    assert {"flat4c", "balance-b"} <= set(shafts.members)


def test_the_legend_says_what_a_letter_stands_for() -> None:
    building = tall(tower(storeys=5, shafts=2))
    (fold,) = building.folding.folds
    said = said_of_fold(building.structure, fold)
    assert said == "branch A × 10 (flat1a ... flat5b), drawn out: the one at 10 ft"


def test_all_names_are_a_range_only_where_none_is_left_to_guess() -> None:
    exact = FoldEntry("A", 3, "rooms/1", "rooms/1-3", ("rooms/1", "rooms/2", "rooms/3"))
    assert exact.all_names == "rooms/1-3"
    guessed = FoldEntry("A", 3, "tap1", "tap1 ... tap10", ("tap1", "tap10", "tap2"))
    assert guessed.all_names == "tap1, tap2, tap10"
