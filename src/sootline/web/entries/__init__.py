"""What may be typed in between calls, and which fact of the year is it?"""
