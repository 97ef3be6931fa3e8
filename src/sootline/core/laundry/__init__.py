"""What may share a load, a sink, a rack, on which settings, and up to what limit?"""
