"""How good the lays are, how many are proved least, and how long they take."""
