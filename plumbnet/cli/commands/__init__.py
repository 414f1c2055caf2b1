"""The commands, a module each, named after it, which registers itself when it is imported."""
