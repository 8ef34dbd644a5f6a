#include "core/words/sentences.h"

namespace loadwarden {

namespace {

constexpr std::int64_t minuteMs = 60'000;

} // namespace

Words Sentences::ofKey() const
{
    switch (f_.key) {
#define LW_KEY(enumerator, text, rule)                                                             \
    case Key::enumerator: return enumerator();
#include "core/release/finding_keys.def"
#undef LW_KEY
    }
    return {};
}

QString Sentences::review() const
{
    if (is(Outcome::review)) {
        switch (f_.reviewer) {
        case Reviewer::none: return tr("It must be reviewed.");
        case Reviewer::lead:
            return tr("A lead who neither recorded it nor ran the load, or a supervisor, must "
                      "review it.");
        case Reviewer::supervisor: return tr("A supervisor must review it.");
        case Reviewer::secondSupervisor:
            return tr("A second supervisor, who did not record it, must review it.");
        }
    }
    if (f_.reviewed) {
        switch (f_.reviewer) {
        case Reviewer::none: return tr("It was reviewed: this load is not affected.");
        case Reviewer::lead:
            return tr("A lead or supervisor reviewed it: this load is not affected.");
        case Reviewer::supervisor:
            return tr("A supervisor reviewed it: this load is not affected.");
        case Reviewer::secondSupervisor:
            return tr("A second supervisor reviewed it: this load is not affected.");
        }
    }
    return {};
}

Words Sentences::words() const
{
    Words words = ofKey();
    if (const QString by = review(); !by.isEmpty()) {
        words.says = tr("%1 %2", "a finding, then who reviews it").arg(words.says, by);
    }
    if (f_.reviewed && is(Outcome::note)) {
        words.next.clear();
    }
    return words;
}

QString Sentences::subject() const
{
    return f_.subject.empty() ? tr("(not named)") : QString::fromStdString(f_.subject);
}

QString Sentences::place() const
{
    return f_.subject.empty() ? tr("place not stated") : QString::fromStdString(f_.subject);
}

QString Sentences::parameter() const
{
    if (subjectIs("temperature")) {
        return tr("temperature");
    }
    if (subjectIs("exposure")) {
        return tr("exposure time");
    }
    if (subjectIs("pressure")) {
        return tr("pressure");
    }
    if (subjectIs("drying")) {
        return tr("drying time");
    }
    if (subjectIs("concentration")) {
        return tr("gas concentration");
    }
    if (subjectIs("humidity")) {
        return tr("humidity");
    }
    return subject();
}

QString Sentences::printoutField() const
{
    if (subjectIs("program")) {
        return tr("program");
    }
    if (subjectIs("sterilizer")) {
        return tr("sterilizer");
    }
    if (subjectIs("counter")) {
        return tr("cycle counter");
    }
    if (subjectIs("start")) {
        return tr("start of the cycle");
    }
    if (subjectIs("end")) {
        return tr("end of the cycle");
    }
    return subject();
}

QString Sentences::entries() const
{
    struct Entry {
        std::string_view field;
        QString words;
    };
    const Entry entries[] = {
        {"activation", tr("activations of biological indicators")},
        {"alarms", tr("alarms")},
        {"checkLost", tr("statements that a package check is lost")},
        {"checks", tr("package checks")},
        {"closings", tr("closings of incidents")},
        {"confirmed", tr("confirmations of items")},
        {"end", tr("ends of aeration")},
        {"failures", tr("process failures")},
        {"incidentFinding", tr("findings of incidents")},
        {"interrupted", tr("interruptions of aeration")},
        {"leak", tr("readings of leak tests")},
        {"lost", tr("statements that an indicator is lost")},
        {"lostReadings", tr("statements that a reading is lost")},
        {"physical", tr("statements about the physical record of a test")},
        {"printout", tr("printouts")},
        {"printoutAnswers", tr("answers about the printout")},
        {"printoutLost", tr("statements that the printout is lost")},
        {"readings", tr("readings")},
        {"recorded", tr("items recorded in the load")},
        {"resolutions", tr("causes and actions after a failure")},
        {"reviews", tr("reviews")},
        {"service", tr("entries about the service of the sterilizer")},
        {"start", tr("starts of aeration")},
        {"traces", tr("traces of the cycle")},
        {"unsettled", tr("statements that an indicator cannot be settled")},
        {"verifications", tr("verifications of the physical record")},
        {"voidReason", tr("reasons for a void test")},
        {"voided", tr("statements that something is void")},
    };
    for (const Entry& entry : entries) {
        if (subjectIs(entry.field)) {
            return entry.words;
        }
    }
    return subject();
}

QString Sentences::count() const
{
    return f_.count > 0 ? QString::number(f_.count) : tr("not counted");
}

QString Sentences::time() const
{
    if (!f_.changesAt) {
        return {};
    }
    const Instant t = *f_.changesAt;
    const Duration seconds{t.ms - minuteOf(t) * minuteMs};
    const Instant minute = seconds.ms == 0 ? t : t - seconds + Duration::minutes(1);
    return QString::fromStdString(sayTime(minute, style_));
}

QString Sentences::readAgainst(const QString& withValueAndLimit) const
{
    if (!f_.value || !f_.limit) {
        return {};
    }
    return withValueAndLimit.arg(QString::fromStdString(sayQuantity(*f_.value)),
                                 QString::fromStdString(sayQuantity(*f_.limit)));
}

QString Sentences::reprocessLoad()
{
    return tr("Reprocess every item of the load: unwrap, clean as needed, rewrap, add new "
              "indicators, and sterilize again.");
}

QString Sentences::reprocessItem()
{
    return tr("Reprocess this item: unwrap, clean as needed, rewrap, add new indicators, and "
              "sterilize it in another load.");
}

QString Sentences::secondReader()
{
    return tr("Have a second named person read it by the product's directions and record what they "
              "see. If it stays unclear, it counts as rejected.");
}

QString Sentences::readDirections()
{
    return tr("Read it by the product's directions and record what you see. A moving front need "
              "only have entered the accept zone; it need not fill it.");
}

QString Sentences::guardedDoor()
{
    return tr(
        "After an ethylene oxide or hydrogen peroxide cycle, first finish the maker's steps "
        "for an abort and for purging the chamber, and touch the load only in the gloves that "
        "the instructions for use name.");
}

QString Sentences::repeatTest()
{
    return tr("Run the test again, and have a lead record why this one is void.");
}

} // namespace loadwarden
