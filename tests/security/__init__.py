"""What comes from elsewhere, as somebody hostile would make it."""
