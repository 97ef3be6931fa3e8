"""Sign-in, sign-out, attachments, and whether the program is well."""
