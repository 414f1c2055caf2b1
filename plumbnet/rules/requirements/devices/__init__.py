"""Requirements on checks, pumps and loops, and about parts that no water reaches."""
