"""The same estimates, thousands at once. The readable code beside this package defines them."""
