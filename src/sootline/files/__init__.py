"""Reading and writing files: job files, rule files, tables."""
