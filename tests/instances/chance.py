"""Chance that repeats: what is drawn depends on the seed alone."""

from random import Random


def seeded(seed: int) -> Random:
    """Return a generator for test data."""
    return Random(seed)  # noqa: S311 - test data, no secret
