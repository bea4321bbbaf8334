"""From a quilt to what must be cut: one module a part."""
