"""The edge in the window: where the binding starts, moved by hand."""
