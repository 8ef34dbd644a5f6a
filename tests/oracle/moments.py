"""Moments, facility days and test periods (RULES.md, section 2).

A moment is an integer: milliseconds since 1970-01-01T00:00Z. A day is the ordinal of a local date.
"""

from datetime import date, datetime, timedelta, timezone
from functools import lru_cache
from zoneinfo import ZoneInfo

MINUTE = 60_000
HOUR = 60 * MINUTE
_EPOCH = date(1970, 1, 1).toordinal()


@lru_cache(maxsize=1 << 15)
def moment(text):
    """The moment of a schema `time`, for example 2031-03-04T07:14:00.250-06:00."""
    value = (day_of(text[:10]) - _EPOCH) * 24 * HOUR + int(text[11:13]) * HOUR + int(text[14:16]) * MINUTE
    zone_at = len(text) - (1 if text[-1] == "Z" else 6)
    if zone_at > 16:
        seconds, _, fraction = text[17:zone_at].partition(".")
        value += int(seconds) * 1000 + int((fraction + "000")[:3])
    if text[-1] != "Z":
        offset = int(text[zone_at + 1:zone_at + 3]) * HOUR + int(text[zone_at + 4:zone_at + 6]) * MINUTE
        value += offset if text[zone_at] == "-" else -offset
    return value


@lru_cache(maxsize=1 << 12)
def day_of(text):
    """The day of a schema `date`."""
    return date(int(text[0:4]), int(text[5:7]), int(text[8:10])).toordinal()


def written(ms):
    """A moment in UTC with milliseconds, as decisions are printed."""
    base = datetime.fromtimestamp(ms // 1000, timezone.utc)
    return base.strftime("%Y-%m-%dT%H:%M:%S") + ".%03dZ" % (ms % 1000)


def minute(ms):
    """The UTC minute, seconds cut off."""
    return ms // MINUTE


def from_end_on(ms, end):
    """Whether a moment is from a cycle's end on, both cut to the minute; no end: never."""
    return end is not None and ms // MINUTE >= end // MINUTE


class Zone:
    """The facility's time zone."""

    def __init__(self, name):
        self.info = ZoneInfo(name)
        self._absolute = {}

    def day(self, ms):
        """The facility day (local calendar date) in which a moment lies."""
        return datetime.fromtimestamp(ms // 1000, self.info).toordinal()

    def absolute(self, day, hour=0, minutes=0):
        """A local time made absolute: the first of two; in a gap, the first moment after it."""
        key = (day, hour, minutes)
        found = self._absolute.get(key)
        if found is None:
            if len(self._absolute) > 20000:
                self._absolute.clear()
            found = self._absolute[key] = self._make_absolute(*key)
        return found

    def _make_absolute(self, day, hour, minutes):
        d = date.fromordinal(day)
        wall = datetime(d.year, d.month, d.day, hour, minutes)
        before = self._utc(wall, 0)
        if self._wall(before) == wall:
            return before * 1000
        # In a gap: fold 1 gives the reading by the offset after the gap, which is an earlier moment,
        # so the change of the offset lies in (low, high].
        low, high = self._utc(wall, 1), before
        offset_low = self._offset(low)
        while high - low > 1:
            middle = (low + high) // 2
            if self._offset(middle) == offset_low:
                low = middle
            else:
                high = middle
        return high * 1000

    def _utc(self, wall, fold):
        aware = wall.replace(tzinfo=self.info, fold=fold)
        return int((aware - datetime(1970, 1, 1, tzinfo=timezone.utc)).total_seconds())

    def _wall(self, seconds):
        return datetime.fromtimestamp(seconds, self.info).replace(tzinfo=None, fold=0)

    def offset_minutes(self, ms):
        """Minutes by which the zone's clocks are ahead of UTC at a moment."""
        return self._offset(ms // 1000) // timedelta(minutes=1)

    def _offset(self, seconds):
        return datetime.fromtimestamp(seconds, self.info).utcoffset()

    def next_midnight(self, ms):
        """The first facility midnight after a moment."""
        day = self.day(ms) + 1
        while self.absolute(day) <= ms:
            day += 1
        return self.absolute(day)

    def period(self, ms, test_hour):
        """(number, end) of the test period in which a moment lies; test_hour is "HH:MM"."""
        hour, minutes = int(test_hour[:2]), int(test_hour[3:])
        day = self.day(ms) + 1
        while self.absolute(day, hour, minutes) > ms:
            day -= 1
        return day, self.absolute(day + 1, hour, minutes)


@lru_cache(maxsize=256)
def zone(name):
    """The (cached) zone of a name."""
    return Zone(name)
