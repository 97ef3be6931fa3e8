"""Repairs: what work a flaw takes, where it is done, and what it costs against what is left."""
