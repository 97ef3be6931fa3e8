"""Instances made for tests: seeded generators, and an exhaustive solver for tiny ones."""
