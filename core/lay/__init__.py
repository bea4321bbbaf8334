"""The lay: where every piece and strip lies on the cloth. Knows no quilts."""
