"""One module for each screen; a view reads a form, calls one task, renders."""
