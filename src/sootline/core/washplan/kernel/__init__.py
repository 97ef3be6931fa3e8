"""What does one choice lead to, and which choice near it is better? Written to be compiled.

Everything here works on whole numbers in one-dimensional arrays, so that the very same text runs
interpreted on lists and compiled on machine integers, with equal results.
"""
