"""Other worlds: the layout changed and analysed again, to see what cures and what breaks."""
