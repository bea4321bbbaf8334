"""The cutting table: one cut at a time, over the whole screen."""
