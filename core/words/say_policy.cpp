#include "core/words/say_policy.h"

#include <QCoreApplication>
#include <QString>

#include <span>

namespace loadwarden {
namespace {

/// A word or key of the file, and what people say.
struct Worded {
    std::string_view key;
    const char* says;
};

constexpr Worded sections[] = {
    {"printout", QT_TRANSLATE_NOOP("loadwarden", "Printout")},
    {"acts", QT_TRANSLATE_NOOP("loadwarden", "Recording")},
    {"process", QT_TRANSLATE_NOOP("loadwarden", "Process failures")},
    {"packages", QT_TRANSLATE_NOOP("loadwarden", "Packages")},
    {"scope", QT_TRANSLATE_NOOP("loadwarden", "Reach of a positive")},
    {"air_removal", QT_TRANSLATE_NOOP("loadwarden", "Air-removal test")},
    {"physical", QT_TRANSLATE_NOOP("loadwarden", "Physical monitors")},
    {"trace", QT_TRANSLATE_NOOP("loadwarden", "Traces of the cycle")},
    {"pcd", QT_TRANSLATE_NOOP("loadwarden", "Process challenge devices (PCD)")},
    {"internal", QT_TRANSLATE_NOOP("loadwarden", "Indicators inside packages")},
    {"bi", QT_TRANSLATE_NOOP("loadwarden", "Biological indicators")},
    {"implant", QT_TRANSLATE_NOOP("loadwarden", "Implants")},
    {"control", QT_TRANSLATE_NOOP("loadwarden", "Controls of biological indicators")},
    {"device", QT_TRANSLATE_NOOP("loadwarden", "Devices")},
    {"bowie_dick", QT_TRANSLATE_NOOP("loadwarden", "Bowie-Dick sheet")},
    {"leak", QT_TRANSLATE_NOOP("loadwarden", "Leak test")},
};

/// By "section.name".
constexpr Worded names[] = {
    {"printout.clock_tolerance_minutes",
     QT_TRANSLATE_NOOP("loadwarden", "Its times may differ from the record's by")},
    {"acts.late_hours", QT_TRANSLATE_NOOP("loadwarden", "A note is made of what is recorded later "
                                                        "than")},
    {"process.failed_packages",
     QT_TRANSLATE_NOOP("loadwarden", "Rejected or wet packages that make a process failure")},
    {"packages.rejected_for_supervisor",
     QT_TRANSLATE_NOOP("loadwarden", "A supervisor reviews from this many rejected packages on")},
    {"packages.wet_for_supervisor",
     QT_TRANSLATE_NOOP("loadwarden", "A supervisor reviews from this many wet packages on")},
    {"scope.by", QT_TRANSLATE_NOOP("loadwarden", "A positive puts in question loads of the same")},
    {"air_removal.also_for",
     QT_TRANSLATE_NOOP("loadwarden", "Asked for also before these cycles, besides prevacuum")},
    {"air_removal.made_after",
     QT_TRANSLATE_NOOP("loadwarden", "Where the first test of the period came after the load")},
    {"physical.above_maximum", QT_TRANSLATE_NOOP("loadwarden", "A reading above its upper limit")},
    {"trace.asked", QT_TRANSLATE_NOOP("loadwarden", "A steam load needs the trace of its cycle")},
    {"trace.passable_defects",
     QT_TRANSLATE_NOOP("loadwarden", "Defects of the recorder's text that leave one usable")},
    {"trace.differs_kelvin",
     QT_TRANSLATE_NOOP("loadwarden", "A typed temperature may lie outside of one by")},
    {"trace.differs_seconds",
     QT_TRANSLATE_NOOP("loadwarden", "A typed exposure or drying may lie outside of one by")},
    {"pcd.steam", QT_TRANSLATE_NOOP("loadwarden", "In a steam load")},
    {"pcd.hydrogen_peroxide", QT_TRANSLATE_NOOP("loadwarden", "In a hydrogen peroxide load")},
    {"pcd.dry_heat", QT_TRANSLATE_NOOP("loadwarden", "In a dry heat load")},
    {"pcd.types_steam",
     QT_TRANSLATE_NOOP("loadwarden", "ISO 11140-1 types that count in it, steam")},
    {"pcd.types_other",
     QT_TRANSLATE_NOOP("loadwarden", "ISO 11140-1 types that count in it, other methods")},
    {"internal.types_steam",
     QT_TRANSLATE_NOOP("loadwarden", "ISO 11140-1 types that count, steam")},
    {"internal.types_other",
     QT_TRANSLATE_NOOP("loadwarden", "ISO 11140-1 types that count, other methods")},
    {"bi.steam", QT_TRANSLATE_NOOP("loadwarden", "Routine indicator, steam")},
    {"bi.dry_heat", QT_TRANSLATE_NOOP("loadwarden", "Routine indicator, dry heat")},
    {"bi.hydrogen_peroxide",
     QT_TRANSLATE_NOOP("loadwarden", "Routine indicator, hydrogen peroxide")},
    {"bi.ethylene_oxide", QT_TRANSLATE_NOOP("loadwarden", "Routine indicator, ethylene oxide")},
    {"bi.readout", QT_TRANSLATE_NOOP("loadwarden", "A negative is final at")},
    {"bi.routine_blocks",
     QT_TRANSLATE_NOOP("loadwarden", "Loads wait for the day's routine indicator")},
    {"implant.hold",
     QT_TRANSLATE_NOOP("loadwarden", "What waits for the indicator of a load with an implant")},
    {"control.per",
     QT_TRANSLATE_NOOP("loadwarden", "One reaches, where its instructions do not say")},
    {"control.window_hours", QT_TRANSLATE_NOOP("loadwarden", "It belongs to vials started within")},
    {"device.temperature_tolerance_kelvin",
     QT_TRANSLATE_NOOP("loadwarden",
                       "A program's temperature may differ from the allowed cycle by")},
    {"bowie_dick.read_within_minutes",
     QT_TRANSLATE_NOOP("loadwarden", "A note is made of a reading later than")},
    {"leak.most_mbar_per_minute",
     QT_TRANSLATE_NOOP("loadwarden", "The pressure may rise by at most")},
    {"leak.settle_minutes", QT_TRANSLATE_NOOP("loadwarden", "Settling before it takes at least")},
    {"leak.test_minutes", QT_TRANSLATE_NOOP("loadwarden", "It takes at least")},
};

/// Words that mean the same wherever they stand.
constexpr Worded values[] = {
    {"cycle-type", QT_TRANSLATE_NOOP("loadwarden", "sterilizer and cycle type")},
    {"sterilizer", QT_TRANSLATE_NOOP("loadwarden", "sterilizer")},
    {"gravity", QT_TRANSLATE_NOOP("loadwarden", "gravity displacement")},
    {"steam-flush-pressure-pulse", QT_TRANSLATE_NOOP("loadwarden", "steam flush pressure pulse")},
    {"fails", QT_TRANSLATE_NOOP("loadwarden", "fails the load")},
    {"review", QT_TRANSLATE_NOOP("loadwarden", "is reviewed")},
    {"if-placed", QT_TRANSLATE_NOOP("loadwarden", "counts where it is placed")},
    {"required", QT_TRANSLATE_NOOP("loadwarden", "must be there")},
    {"weekly", QT_TRANSLATE_NOOP("loadwarden", "every week")},
    {"each-day", QT_TRANSLATE_NOOP("loadwarden", "each day of use")},
    {"every-load", QT_TRANSLATE_NOOP("loadwarden", "in every load")},
    {"release", QT_TRANSLATE_NOOP("loadwarden", "the first readout that allows release")},
    {"last", QT_TRANSLATE_NOOP("loadwarden", "the last readout of its instructions")},
    {"true", QT_TRANSLATE_NOOP("loadwarden", "yes")},
    {"false", QT_TRANSLATE_NOOP("loadwarden", "no")},
    {"yes", QT_TRANSLATE_NOOP("loadwarden", "yes")},
    {"no", QT_TRANSLATE_NOOP("loadwarden", "no")},
    {"free-line", QT_TRANSLATE_NOOP("loadwarden", "lines without a sample")},
    {"midnight", QT_TRANSLATE_NOOP("loadwarden", "a clock that passes midnight")},
    {"last-line-open", QT_TRANSLATE_NOOP("loadwarden", "a last line without its end")},
    {"whole-load", QT_TRANSLATE_NOOP("loadwarden", "the whole load")},
    {"implants-only", QT_TRANSLATE_NOOP("loadwarden", "the implants only")},
    {"day", QT_TRANSLATE_NOOP("loadwarden", "a day")},
    {"load", QT_TRANSLATE_NOOP("loadwarden", "one load")},
};

constexpr Worded confidences[] = {
    {"seen", QT_TRANSLATE_NOOP("loadwarden", "read in the document")},
    {"restated", QT_TRANSLATE_NOOP("loadwarden", "restated from the document")},
    {"memory", QT_TRANSLATE_NOOP("loadwarden", "from memory")},
    {"common-practice", QT_TRANSLATE_NOOP("loadwarden", "common practice")},
    {"facility", QT_TRANSLATE_NOOP("loadwarden", "the facility's own")},
};

/// By the end of a setting's name.
constexpr Worded units[] = {
    {"_minutes", QT_TRANSLATE_NOOP("loadwarden", "%1 min")},
    {"_seconds", QT_TRANSLATE_NOOP("loadwarden", "%1 s")},
    {"_hours", QT_TRANSLATE_NOOP("loadwarden", "%1 h")},
    {"_kelvin", QT_TRANSLATE_NOOP("loadwarden", "%1 K")},
    {"mbar_per_minute", QT_TRANSLATE_NOOP("loadwarden", "%1 mbar a minute")},
};

QString raw(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString wordsOf(std::span<const Worded> table, std::string_view key)
{
    for (const Worded& each : table) {
        if (each.key == key) {
            return QCoreApplication::translate("loadwarden", each.says);
        }
    }
    return raw(key);
}

} // namespace

std::string sayPolicySection(std::string_view section)
{
    return wordsOf(sections, section).toStdString();
}

std::string sayPolicySetting(std::string_view section, std::string_view name)
{
    return wordsOf(names, std::string(section) + '.' + std::string(name)).toStdString();
}

std::string sayPolicyValue(std::string_view section, std::string_view name, std::string_view value)
{
    if (value.empty()) {
        return QCoreApplication::translate("loadwarden", "none").toStdString();
    }
    // "mbar_per_minute" ends like no other unit; the longest fits first.
    const Worded* best = nullptr;
    for (const Worded& unit : units) {
        if (name.ends_with(unit.key) && (best == nullptr || unit.key.size() > best->key.size())) {
            best = &unit;
        }
    }
    if (best != nullptr) {
        return QCoreApplication::translate("loadwarden", best->says).arg(raw(value)).toStdString();
    }
    if ((section == "air_removal" && name == "also_for")
        || (section == "trace" && name == "passable_defects")) {
        QString list;
        for (const QString& each : raw(value).split(QStringLiteral(", "))) {
            const QString said = wordsOf(values, each.toStdString());
            list = list.isEmpty()
                       ? said
                       : QCoreApplication::translate("loadwarden", "%1, %2").arg(list, said);
        }
        return list.toStdString();
    }
    return wordsOf(values, value).toStdString();
}

std::string sayConfidence(std::string_view confidence)
{
    return wordsOf(confidences, confidence).toStdString();
}

} // namespace loadwarden
