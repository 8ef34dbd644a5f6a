"""The policies of the comparison: the default, variants that between them use every allowed value, and the default as a
file of policy_version 1 states it."""

import os
import re

from policy import SINCE_VERSION_2

HERE = os.path.dirname(os.path.abspath(__file__))

# value lists by variant; a setting that is not named keeps its default
VARIANTS = {
    "variant-1": {"printout.clock_tolerance_minutes": "0", "acts.late_hours": "0", "process.failed_packages": "1",
                  "packages.rejected_for_supervisor": "1", "packages.wet_for_supervisor": "1",
                  "scope.by": '"sterilizer"', "air_removal.also_for": '["gravity"]',
                  "physical.above_maximum": '"fails"', "pcd.steam": '"required"',
                  "pcd.hydrogen_peroxide": '"required"', "pcd.dry_heat": '"required"', "pcd.types_steam": "[5]",
                  "pcd.types_other": "[1, 5]", "bi.steam": '"every-load"', "bi.dry_heat": '"every-load"',
                  "bi.hydrogen_peroxide": '"every-load"', "bi.readout": '"last"', "bi.routine_blocks": "true",
                  "control.per": '"load"', "control.window_hours": "0",
                  "device.temperature_tolerance_kelvin": "0.0", "bowie_dick.read_within_minutes": "1",
                  "leak.most_mbar_per_minute": "0.1", "leak.settle_minutes": "60", "leak.test_minutes": "60",
                  "trace.asked": '"yes"', "trace.passable_defects": "[]", "trace.differs_kelvin": "0",
                  "trace.differs_seconds": "0"},
    "variant-2": {"implant.hold": '"implants-only"', "air_removal.made_after": '"review"', "bi.steam": '"weekly"',
                  "bi.dry_heat": '"weekly"', "bi.routine_blocks": "true", "acts.late_hours": "1",
                  "trace.passable_defects": '["free-line", "last-line-open"]', "trace.differs_seconds": "59"},
    "variant-3": {"air_removal.also_for": '["gravity", "steam-flush-pressure-pulse"]',
                  "air_removal.made_after": '"review"', "printout.clock_tolerance_minutes": "2",
                  "control.window_hours": "1", "bi.readout": '"last"', "bi.routine_blocks": "true",
                  "leak.most_mbar_per_minute": "1.0", "leak.settle_minutes": "10", "leak.test_minutes": "15",
                  "trace.asked": '"yes"', "trace.differs_kelvin": "0.5", "trace.differs_seconds": "30"},
    "variant-4": {"air_removal.also_for": '["steam-flush-pressure-pulse"]', "scope.by": '"sterilizer"',
                  "pcd.types_steam": "[6]", "pcd.types_other": "[3, 4, 5, 6]", "internal.types_steam": "[5, 6]",
                  "internal.types_other": "[4, 5, 6]", "pcd.steam": '"required"', "pcd.dry_heat": '"required"',
                  "control.per": '"load"', "bowie_dick.read_within_minutes": "30",
                  "device.temperature_tolerance_kelvin": "0.2", "implant.hold": '"implants-only"',
                  "trace.passable_defects": '["midnight"]', "trace.differs_kelvin": "0.25"},
    "variant-5": {"bi.steam": '"every-load"', "implant.hold": '"implants-only"', "process.failed_packages": "1",
                  "packages.wet_for_supervisor": "1", "internal.types_steam": "[4, 6]",
                  "internal.types_other": "[1, 3]", "air_removal.made_after": '"review"'},
    "variant-6": {"bi.hydrogen_peroxide": '"every-load"', "bi.dry_heat": '"every-load"',
                  "packages.rejected_for_supervisor": "1", "physical.above_maximum": '"fails"',
                  "pcd.hydrogen_peroxide": '"required"', "pcd.types_other": "[5]", "bi.steam": '"weekly"',
                  "bi.readout": '"last"', "control.window_hours": "1",
                  "trace.asked": '"yes"', "trace.passable_defects": '["last-line-open", "free-line"]'},
    "variant-7": {"bi.dry_heat": '"weekly"', "implant.hold": '"implants-only"', "bi.routine_blocks": "true",
                  "air_removal.made_after": '"review"', "air_removal.also_for": '["gravity"]',
                  "acts.late_hours": "2", "printout.clock_tolerance_minutes": "1",
                  "device.temperature_tolerance_kelvin": "0.25", "leak.most_mbar_per_minute": "0.65"},
    "version-1": {},
}
# out of 100 records, how many use which policy
SHARES = {"us-hospital": 32, "version-1": 5, "variant-1": 10, "variant-2": 10, "variant-3": 9, "variant-4": 9, "variant-5": 8,
          "variant-6": 8, "variant-7": 9}


def variant_text(default_text, name):
    """The TOML text of a variant."""
    text = re.sub(r'(?m)^id = "[^"]*"$', 'id = "%s"' % name, default_text, count=1)
    text = re.sub(r'(?m)^title = "[^"]*"$', 'title = "Test policy %s"' % name, text, count=1)
    for setting, value in VARIANTS[name].items():
        pattern = r'(?m)^(\[%s\]\nvalue = ).*$' % re.escape(setting)
        text, changed = re.subn(pattern, lambda m: m.group(1) + value, text)
        if changed != 1:
            raise ValueError("no such setting: " + setting)
    return of_version_1(text) if name == "version-1" else text


def of_version_1(text):
    """A policy as a file of policy_version 1 states it: without what came with 2, which then has its default."""
    text, changed = re.subn(r"(?m)^policy_version = 2$", "policy_version = 1", text)
    for setting in SINCE_VERSION_2:
        text, gone = re.subn(r"(?m)^(?:#.*\n)*\[%s\]\n(?:[a-z]+ = .*\n)*\n?" % re.escape(setting), "", text)
        changed += gone
    if changed != 1 + len(SINCE_VERSION_2):
        raise ValueError("not a policy of version 2")
    return text


def write_policies(folder):
    """Write all policies into a folder; {name: path}."""
    path = os.path.join(HERE, "policies", "us-hospital.toml")
    if not os.path.exists(path):           # inside the project the policies lie elsewhere
        path = os.path.join(HERE, "..", "..", "resources", "policies", "us-hospital.toml")
    with open(path, encoding="utf-8") as file:
        default_text = file.read()
    os.makedirs(folder, exist_ok=True)
    paths = {}
    for name in SHARES:
        paths[name] = os.path.join(folder, name + ".toml")
        text = default_text if name == "us-hospital" else variant_text(default_text, name)
        with open(paths[name], "w", encoding="utf-8") as file:
            file.write(text)
    return paths
