"""The job document: one input for every deciding task."""
