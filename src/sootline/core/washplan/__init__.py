"""Which pieces go into which drum, when, and when is every member ready again?"""
