#include "ui/records/verify_text.h"

#include "ui/look/text.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostFaults = 4; ///< shown one by one

struct VerifyWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::VerifyWords)
};

QString number(std::int64_t count)
{
    return QLocale().toString(static_cast<qlonglong>(count));
}

void addFaults(QStringList& lines, const VerifyReport& report)
{
    const std::size_t shown = std::min(mostFaults, report.faults.size());
    for (std::size_t i = 0; i < shown; ++i) {
        lines << text(sentenceOf(report.faults[i]));
    }
    const std::int64_t more = report.faultCount - static_cast<std::int64_t>(shown);
    if (more > 0) {
        lines << VerifyWords::tr("And %1 more: \"loadwarden-cli verify\" lists them.")
                     .arg(number(more));
    }
}

QString sealsText(const VerifyReport& report)
{
    if (report.sealsHeld == 0) {
        return VerifyWords::tr("No seal holds: nobody vouches that the whole journal was not "
                               "written anew.");
    }
    if (report.sealsHeld == 1) {
        return VerifyWords::tr("One seal holds. It vouches for everything up to entry %1.")
            .arg(number(report.sealedTo));
    }
    return VerifyWords::tr("%1 seals hold. The newest vouches for everything up to entry %2.")
        .arg(number(report.sealsHeld), number(report.sealedTo));
}

void addKeys(QStringList& lines, const std::vector<SealedBy>& keys, const HouseStyle& style)
{
    if (keys.size() < 2) {
        return;
    }
    constexpr std::size_t digits = 16;
    for (const SealedBy& by : keys) {
        const QString key = text(hexOf(by.seals.key.key).substr(0, digits));
        lines << (by.recordedBy.empty()
                      ? VerifyWords::tr("Key %1, that of the first seal: %2 seals hold.")
                            .arg(key, number(by.seals.held))
                      : VerifyWords::tr("Key %1, recorded by %2 on %3: %4 seals hold. Ask whether "
                                        "that was so.")
                            .arg(key, text(by.recordedBy), text(sayTime(by.recordedAt, style)),
                                 number(by.seals.held)));
    }
}

} // namespace

VerifiedText verifiedText(const Verified& verified, const HouseStyle& style)
{
    const VerifyReport& report = verified.report;
    VerifiedText said{.isGood = report.sound(), .answer = {}, .lines = {}};
    said.answer =
        report.faultCount > 0
            ? VerifyWords::tr("This journal was damaged or tampered with. Stop working in it, keep "
                              "the file as it is, and compare it with the newest backup.")
        : report.cancelled
            ? VerifyWords::tr("It was stopped: nothing is wrong with the part that was checked.")
            : VerifyWords::tr("Nothing is wrong with what was checked.");
    addFaults(said.lines, report);
    said.lines << VerifyWords::tr("Checked: %1 entries, each against its hash and the entry before "
                                  "it; what guards them, the newest entry that this computer has "
                                  "seen, and the seals.")
                      .arg(number(report.entries));
    said.lines << sealsText(report);
    addKeys(said.lines, verified.keys, style);
    if (!report.clockSteps.empty()) {
        const auto steps = static_cast<std::int64_t>(report.clockSteps.size());
        said.lines << (steps == 1
                           ? VerifyWords::tr("One entry was recorded by a clock that was behind "
                                             "that of the entry before. That is no fault.")
                           : VerifyWords::tr("%1 entries were recorded by a clock that was behind "
                                             "that of the entry before. That is no fault.")
                                 .arg(number(steps)));
    }
    said.lines << VerifyWords::tr("Not checked while somebody works: the tables by which loads are "
                                  "found, and the file's pages. \"loadwarden-cli verify\" checks "
                                  "them when the journal is closed everywhere.");
    return said;
}

} // namespace loadwarden::ui
