"""What was written down without a signal comes in later: how is it taken, and how is it told?"""
