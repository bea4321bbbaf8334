"""Geometry round the quilt's edge: joins, corners, bias."""
