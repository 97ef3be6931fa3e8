"""How are results put before a reader: which lines, in which order, with what beside them?

Nothing here holds a sentence; a line is a message with its values.
"""
