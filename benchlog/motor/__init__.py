"""What the readings mean. Pure."""
