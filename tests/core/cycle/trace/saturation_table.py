"""Saturation pressures by the general-purpose package python3-iapws (IAPWS-IF97, region 4).

Reads temperatures in degrees Celsius, one a line, and writes for each the saturation pressure in
kPa and the saturation temperature of that pressure in degrees Celsius.
"""
import sys

from iapws.iapws97 import _PSat_T, _TSat_P

for line in sys.stdin:
    pressure = _PSat_T(float(line) + 273.15)
    print(repr(pressure * 1000), repr(_TSat_P(pressure) - 273.15))
