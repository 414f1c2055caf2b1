"""What the code asks: profiles (data), facts (types), findings (one small file each)."""
