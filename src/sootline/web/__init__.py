"""What people see in a browser, and who may see what."""
