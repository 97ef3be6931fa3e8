"""Where the record, its projections, attachments and accounts are kept: a database and files."""
