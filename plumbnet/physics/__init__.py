"""What heated water does: numbers in, numbers out; knows no parts."""
