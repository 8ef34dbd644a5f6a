#!/usr/bin/env python3
"""Checks that core/ is built in floors.

usage: floors_test.py ROOT

A file of a folder in core/ may include its own folder and lower floors: no higher floor, no sibling
on its own floor, nothing of app/, ui/ or tests/, and no header of QtGui or QtWidgets, which core/
does not link either. words/ stands aside: it may include every folder of core/ and is included by
none. Every folder of core/ must be listed here. Before the real tree, the check is tried on a small
one with planted violations.
"""
import pathlib
import re
import sys
import tempfile

FLOORS = [
    {"quantities"},
    {"journal"},
    {"cycle", "indicators", "packaging"},
    {"loads"},
    {"sterilizers"},
    {"release"},
    {"acts"},
    {"exchange"},
    {"guidance"},
    {"store"},
    {"desk"},
]
ASIDE = "words"
HEIGHT = {folder: height for height, floor in enumerate(FLOORS, 1) for folder in floor}

SUFFIXES = {".h", ".hpp", ".inc", ".def", ".cpp", ".cc", ".c"}
INCLUDE = re.compile(r'^[ \t]*#[ \t]*(?:include|import)[ \t]*[<"]([^>"\n]+)[>"]', re.MULTILINE)
# Headers of windows by module, and the classes that somebody would reach for first.
WINDOWS = re.compile(
    r"^(Qt(Gui|Widgets|Qml|Quick\w*|PrintSupport|Svg\w*|OpenGL\w*)(/|$)"
    r"|Q(Abstract(Button|ItemView|SpinBox)|Action|Application|Brush|Clipboard|Color|Cursor|Dialog|"
    r"Font|GuiApplication|Icon|Image|Label|Layout|LineEdit|MainWindow|Menu|MessageBox|Paint|Palette|"
    r"Pdf|Pen|Pixmap|Print|PushButton|Screen|Style|TextDocument|Validator|Widget|Window)\w*$)")
WINDOW_TARGET = re.compile(r"\bQt6?::(Gui|Widgets|Qml|Quick\w*|PrintSupport|Svg\w*|OpenGL\w*)\b")


def complaint(folder, included):
    """What is wrong with an include in that folder of core/, or None."""
    if WINDOWS.match(included):
        return "is a header of windows"
    parts = pathlib.PurePosixPath(included).parts
    if ".." in parts:
        return "leaves its folder by '..'; write it from the root, as core/..."
    if parts[0] in ("app", "ui", "tests", "demo"):
        return f"is of {parts[0]}/, above core/"
    if parts[0] != "core":
        return None
    other = parts[1] if len(parts) > 2 else None
    if other == folder:
        return None
    if other == ASIDE:
        return f"is of {ASIDE}/, which no other folder of core/ includes"
    if other not in HEIGHT:
        return "is of no listed floor"
    if folder == ASIDE or HEIGHT[other] < HEIGHT[folder]:
        return None
    if HEIGHT[other] == HEIGHT[folder]:
        return f"is of a sibling on floor {HEIGHT[folder]}"
    return f"is of floor {HEIGHT[other]}, above floor {HEIGHT[folder]}"


def check(root):
    """(number of files, complaints) for the core/ of a tree."""
    core = pathlib.Path(root) / "core"
    files = 0
    complaints = []
    for path in sorted(core.rglob("*")):
        where = path.relative_to(root).as_posix()
        if path.name == "CMakeLists.txt":
            for match in WINDOW_TARGET.finditer(path.read_text(encoding="utf-8")):
                complaints.append(f"{where}: links {match.group(0)}, a library of windows")
        if path.suffix not in SUFFIXES or not path.is_file():
            continue
        files += 1
        folder = path.relative_to(core).parts[0]
        if folder not in HEIGHT and folder != ASIDE:
            complaints.append(f"{where}: {folder} is not a listed folder of core/")
            continue
        text = path.read_text(encoding="utf-8")
        for match in INCLUDE.finditer(text):
            wrong = complaint(folder, match.group(1))
            if wrong:
                line = text.count("\n", 0, match.start()) + 1
                complaints.append(f"{where}:{line}: {match.group(1)} {wrong}")
    return files, complaints


PLANTED = {  # file: (its text, whether it is a violation)
    "core/quantities/a.h": ("#include <string>\n#include <QDateTime>\n#include <QLineF>\n", False),
    "core/quantities/CMakeLists.txt": ("target_link_libraries(a PRIVATE Qt6::Core)\n", False),
    "core/release/CMakeLists.txt": ("target_link_libraries(d PRIVATE Qt6::Gui)\n", True),
    "core/quantities/up.h": ('#include "core/cycle/b.h"\n', True),
    "core/cycle/b.h": ('#include "core/quantities/a.h"\n#include "core/cycle/own.h"\n', False),
    "core/cycle/sibling.cpp": ('#pragma once\n  #  include "core/indicators/c.h"\n', True),
    "core/loads/angled.h": ("#include <core/release/d.h>\n", True),
    "core/loads/dots.h": ('#include "../release/d.h"\n', True),
    "core/release/aside.cpp": ('#include "core/words/say.h"\n', True),
    "core/release/words.def": ('#include "core/journal/chain.h"\n', False),
    "core/words/say.cpp": ('#include "core/desk/e.h"\n#include "core/quantities/a.h"\n', False),
    "core/words/window.cpp": ("#include <QtWidgets/QLabel>\n", True),
    "core/desk/widget.cpp": ("#include <QWidget>\n", True),
    "core/desk/ui.cpp": ('#include "ui/shell/window.h"\n', True),
    "core/cellar/new.h": ("#pragma once\n", True),
}


def prove():
    """Complaints about the check itself."""
    with tempfile.TemporaryDirectory() as root:
        for name, (text, _) in PLANTED.items():
            path = pathlib.Path(root) / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        _, complaints = check(root)
    found = {complaint.split(":")[0] for complaint in complaints}
    planted = {name for name, (_, violates) in PLANTED.items() if violates}
    return ([f"planted violation not found: {name}" for name in sorted(planted - found)]
            + [f"found a violation where there is none: {name}" for name in sorted(found - planted)])


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    failures = prove()
    if failures:
        sys.exit("\n".join(failures))
    files, complaints = check(pathlib.Path(sys.argv[1]).resolve())
    if files == 0:
        sys.exit("no source file under core/: is the root right?")
    if complaints:
        sys.exit("\n".join(complaints))
    print(f"{files} files of core/ keep to their floors")


main()
