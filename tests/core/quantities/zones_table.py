#!/usr/bin/env python3
"""Local times resolved by Python's zoneinfo, for zone_outside_test.cpp to compare with.

Only the standard library. Both sides read this computer's tz database, each with code of its own.
Around the changes of offset from 1999 to 2034, and in every fifth year to 2100, it prints, separated by tabs,

    resolve  ZONE  DATE  MINUTE  UTC_MS   a local time and the moment it means
    period   ZONE  UTC_MS  MINUTE  DATE   a moment, the minute of the test, and the test period

by the definitions of zone.h, written here as plainly as they are stated.
"""
import datetime as dt
import zoneinfo

ZONES = """Africa/Casablanca America/Chicago America/New_York America/Sao_Paulo America/St_Johns
    Asia/Gaza Asia/Kathmandu Australia/Lord_Howe Etc/GMT+5 Pacific/Apia UTC""".split()
EPOCH = dt.datetime(1970, 1, 1)
MINUTE = dt.timedelta(minutes=1)
DAY = dt.timedelta(days=1)
UTC = dt.timezone.utc


def offset(zone, utc):
    return utc.replace(tzinfo=UTC).astimezone(zone).utcoffset()


def change_between(zone, before, after):
    """The first moment, to the second, with another offset than `before`, not after `after`."""
    was = offset(zone, before)
    while after - before > dt.timedelta(seconds=1):
        middle = before + dt.timedelta(seconds=(after - before) // dt.timedelta(seconds=2))
        if offset(zone, middle) == was:
            before = middle
        else:
            after = middle
    return after


def changes(zone):
    at, end = dt.datetime(1999, 1, 2), dt.datetime(2100, 12, 30)
    was = offset(zone, at)
    while at < end:
        now = offset(zone, at + DAY)
        if now != was:
            yield change_between(zone, at, at + DAY)
            was = now
        at += DAY


def resolve(zone, date, minute):
    local = dt.datetime.combine(date, dt.time()) + minute * MINUTE
    # PEP 495: of a time that comes twice fold=0 is the first; of one in a gap fold=0 counts with
    # the offset before the gap and fold=1 with the one after it, so the gap's end lies between.
    first = local - local.replace(tzinfo=zone).utcoffset()
    if first + offset(zone, first) == local:
        return first
    return change_between(zone, local - local.replace(tzinfo=zone, fold=1).utcoffset(), first)


def period(zone, utc, minute):
    around = (utc + offset(zone, utc)).date()
    days = [around + n * DAY for n in range(-3, 3)]
    return max(day for day in days if resolve(zone, day, minute) <= utc)


def milliseconds(utc):
    return (utc - EPOCH) // dt.timedelta(milliseconds=1)


def main():
    for name in ZONES:
        zone = zoneinfo.ZoneInfo(name)
        moments = [at for at in changes(zone) if at.year < 2035 or at.year % 5 == 0]
        moments += [dt.datetime(year, 7, 1, 12) for year in range(1999, 2101, 10)]
        for moment in moments:
            day = (moment + offset(zone, moment)).date()
            for date in (day - DAY, day, day + DAY):
                for minute in (0, 1, 30, 59, 90, 120, 150, 179, 180, 1439):
                    at = milliseconds(resolve(zone, date, minute))
                    print("resolve", name, date, minute, at, sep="\t")
            for shift in (-60, -1, 0, 29, 60, 150):
                for minute in (0, 1, 90, 150, 1410):
                    at = moment + shift * MINUTE
                    print("period", name, milliseconds(at), minute, period(zone, at, minute),
                          sep="\t")


main()
