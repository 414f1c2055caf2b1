"""The live board: the engine behind a small server on this machine alone, which follows the file."""

from plumbnet.boards.live.board_server import BoardServer
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.live.shown_page import ShownPage

__all__ = ["BoardServer", "FollowedFile", "ShownPage"]
