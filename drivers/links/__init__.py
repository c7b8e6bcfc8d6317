"""What carries bytes to an instrument and back: a socket, VXI-11, HiSLIP, a serial port, or what else VISA knows.

Each keeps to a deadline of its caller, whatever the other side does; the backends behind pyvisa do not, so the first
four are spoken here.
"""
