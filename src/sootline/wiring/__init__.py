"""Which files and clock answer the ports: each name is bound here, and nowhere else.

One module for each thing that commands ask for, so that a command loads only what it needs.
"""
