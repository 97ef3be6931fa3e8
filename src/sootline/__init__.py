"""Sootline: from the call back to the hook."""

__version__ = "0.1.0"
