"""A policy file as a flat table: policy["bi.steam"] is the value of [bi.steam]."""

import tomllib
from decimal import Decimal


def load_policy(path):
    """Read a policy TOML; decimals stay exact."""
    with open(path, "rb") as file:
        tables = tomllib.loads(file.read().decode("utf-8"), parse_float=Decimal)
    values = {}
    for section, settings in tables.items():
        if isinstance(settings, dict):
            for setting, entry in settings.items():
                values[section + "." + setting] = entry["value"]
    return values
