"""The same for the window, which sees no drivers."""

from drivers.children import CHILD as CHILD
from drivers.children import command as command
