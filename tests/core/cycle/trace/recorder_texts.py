#!/usr/bin/env python3
"""Recorders' texts written by Python's csv and datetime, for recorder_texts_test.cpp to read.

Only the standard library. The numbers are drawn at random (a fixed seed) and come back through csv.reader, so that
both the writing and the reading of quotation marks, separators and line ends are those of Python. It prints, a line each,

    file  SEPARATOR  DECIMAL  FORM  ORDER  LINE_ENDS     and the text as hexadecimal digits behind it
    row   SECONDS  VALUE  VALUE  VALUE                   what the text above means; seconds since the first row
"""
import csv
import datetime as dt
import io
import random

SEPARATORS = {"comma": ",", "semicolon": ";", "tab": "\t"}
LINE_ENDS = {"lf": "\n", "crlf": "\r\n", "cr": "\r"}
DATES = {"year-month-day": "%Y-%m-%d %H:%M:%S", "day-month-year": "%d.%m.%Y %H:%M:%S",
         "month-day-year": "%m/%d/%Y %I:%M:%S %p"}
draw = random.Random(20310304)


def time_text(form, order, begin, seconds):
    moment = begin + dt.timedelta(seconds=seconds)
    if form == "seconds":
        return str(seconds)
    if form == "minutes-seconds":
        return f"{seconds // 60}:{seconds % 60:02}"
    if form == "hours-minutes-seconds":
        return moment.strftime("%H:%M:%S")
    return moment.strftime(DATES[order])


def write(separator, decimal, form, order, ends, quoting):
    begin = dt.datetime(2031, 12, 31, 23, 50, 1) + dt.timedelta(minutes=draw.randrange(0, 600))
    rows, at = [], 0
    for _ in range(draw.randrange(20, 60)):
        values = [round(draw.uniform(-20, 140), draw.randrange(0, 6)) for _ in range(3)]
        rows.append((at, values))
        at += draw.randrange(1, 30)
    out = io.StringIO()
    writer = csv.writer(out, delimiter=SEPARATORS[separator], quoting=quoting, lineterminator=LINE_ENDS[ends])
    writer.writerow(["a report", 'of "one" recorder'])
    writer.writerow(["t", 'A "quoted"' + SEPARATORS[separator] + " name", "B", "remark", "C"])
    for seconds, values in rows:
        cells = [repr(value).replace(".", "," if decimal == "comma" else ".") for value in values]
        cells.insert(2, draw.choice(["", "x", 'he said "no"', "a" + SEPARATORS[separator] + "b"]))
        writer.writerow([time_text(form, order, begin, seconds)] + cells)
    text = out.getvalue()
    back = list(csv.reader(io.StringIO(text, newline=""), delimiter=SEPARATORS[separator]))[2:]
    print("file", separator, decimal, form, order, text.encode().hex())
    for (seconds, _), cells in zip(rows, back, strict=True):
        numbers = [float(cells[i].replace(",", ".")) for i in (1, 2, 4)]
        print("row", seconds, *(value.hex() for value in numbers))


def main():
    forms = [("seconds", "-"), ("minutes-seconds", "-"), ("hours-minutes-seconds", "-")]
    forms += [("date-time", order) for order in DATES]
    for separator in SEPARATORS:
        for decimal in ("point", "comma"):
            for form, order in forms:
                for ends in LINE_ENDS:
                    quoting = draw.choice([csv.QUOTE_MINIMAL, csv.QUOTE_ALL])
                    write(separator, decimal, form, order, ends, quoting)


main()
