"""Pictures made in code, and what becomes of them."""
