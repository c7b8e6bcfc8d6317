"""The process that holds the supply, the lease it holds it under, and the process that waits to rescue."""
