"""Everything printed: sheets as PDF, pictures, codes, timelines."""
