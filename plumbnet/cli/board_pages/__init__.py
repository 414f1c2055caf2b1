"""Boards that commands bring: one inside a page to hand over, and a page that is served on this machine."""

from plumbnet.cli.board_pages.inner_board import BoardInside, board_inside, refuse_board
from plumbnet.cli.board_pages.live_page import LivePage, followed_page, serve

__all__ = ["BoardInside", "LivePage", "board_inside", "followed_page", "refuse_board", "serve"]
