"""The pure core: facts in, results with reasons out; no clock, file, network or chance."""
