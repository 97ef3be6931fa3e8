"""Which text of a cell is not what it should be?"""

from sootline.core.basis import UnreadableValueError


class UnreadableCellError(UnreadableValueError):
    """A cell's text cannot be read; whoever reads the line adds row, column and value.

    Args:
        message: what is wrong, as a message id.
        values: what the sentence names beside row, column and value.
    """
