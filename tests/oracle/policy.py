"""A policy file as a flat table: policy["bi.steam"] is the value of [bi.steam]."""

import tomllib
from decimal import Decimal

# What a file of policy_version 1 means, which knows no traces; one of version 2 states it.
SINCE_VERSION_2 = {"trace.asked": "no", "trace.passable_defects": ["free-line", "midnight", "last-line-open"],
                   "trace.differs_kelvin": 1, "trace.differs_seconds": 60}


def load_policy(path):
    """Read a policy TOML; decimals stay exact."""
    with open(path, "rb") as file:
        return read_policy(file.read().decode("utf-8"))


def read_policy(text):
    """The values of a policy's TOML text. ValueError: a setting is stated, or not, against its policy_version."""
    tables = tomllib.loads(text, parse_float=Decimal)
    values = {}
    for section, settings in tables.items():
        if isinstance(settings, dict):
            for setting, entry in settings.items():
                values[section + "." + setting] = entry["value"]
    for setting, default in SINCE_VERSION_2.items():
        if (setting in values) == (tables["policy_version"] == 1):
            raise ValueError("policy_version %d and %s" % (tables["policy_version"], setting))
        values.setdefault(setting, default)
    return values
