"""Whole figures, printed by one command."""
