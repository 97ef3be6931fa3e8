"""The same tasks from a terminal."""
