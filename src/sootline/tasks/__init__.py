"""The things an officer does, each a function of facts; what they need from outside is a port."""
