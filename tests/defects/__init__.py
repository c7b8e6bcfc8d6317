"""Deliberate defects, one a patch file, each with the tests that must notice it."""
