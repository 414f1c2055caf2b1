"""What an exercise asks, one sort of question to a module; each registers itself."""
