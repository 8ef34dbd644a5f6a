#include "core/words/say_need.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

class NeedSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    NeedSentences(const Need& need, const HouseStyle& style) : n_(need), style_(style) {}

    [[nodiscard]] NeedSaid said() const
    {
        return {what().toStdString(), says().toStdString(), action().toStdString()};
    }

private:
    [[nodiscard]] QString what() const
    {
        switch (n_.kind) {
        case NeedKind::growth: return tr("Growth in a biological indicator");
        case NeedKind::evidenceWorse: return tr("Signed, and worse now");
        case NeedKind::failed: return tr("Failed");
        case NeedKind::testFailed: return tr("Air-removal test failed");
        case NeedKind::testNotRun: return tr("Air-removal test not run");
        case NeedKind::testNotRead: return tr("Air-removal test not read");
        case NeedKind::controlDead: return tr("Control did not grow");
        case NeedKind::biologicalDue: return tr("Biological indicator due");
        case NeedKind::evidenceChanged: return tr("Evidence changed since signed");
        case NeedKind::review: return tr("Waits for a review");
        case NeedKind::printout: return tr("Printout incomplete");
        case NeedKind::reading: return tr("Readings missing");
        case NeedKind::otherEvidence: return tr("Record incomplete");
        case NeedKind::signature: return tr("Ready to sign");
        case NeedKind::biologicalComing: return tr("Biological indicator incubating");
        case NeedKind::lotExpires: return tr("Lot expires");
        }
        return {};
    }

    [[nodiscard]] QString says() const
    {
        switch (n_.kind) {
        case NeedKind::evidenceWorse:
            return withFindings(tr("Find out where its items are, and have it signed anew."));
        case NeedKind::evidenceChanged:
            return tr("Something was recorded or corrected after the signature. Look at the load "
                      "again and sign anew where needed.");
        case NeedKind::signature:
            return n_.hasImplant ? tr("All evidence is there and good. It holds an implant: a lead "
                                      "or supervisor signs.")
                                 : tr("All evidence is there and good.");
        case NeedKind::testNotRun:
            return n_.lot.empty()
                       ? tr("No Bowie-Dick test in the test period that began on %1.").arg(at())
                       : tr("Test %1 is void. Run another before the next load.")
                             .arg(QString::fromStdString(n_.lot));
        case NeedKind::testNotRead:
            return tr("Test %1 ended on %2. Read its sheet.")
                .arg(QString::fromStdString(n_.lot), at());
        case NeedKind::testFailed:
            return tr("Test %1 failed. Take the sterilizer out of service until cause and action "
                      "are recorded and a test has passed.")
                .arg(QString::fromStdString(n_.lot));
        case NeedKind::biologicalDue:
            return n_.at ? tr("To be read since %1. %2").arg(at(), first()) : first();
        case NeedKind::biologicalComing: return first();
        case NeedKind::lotExpires:
            return tr("%1, lot %2: the last moment to use it is before %3.")
                .arg(QString::fromStdString(n_.name), QString::fromStdString(n_.lot), at());
        case NeedKind::failed:
            return withFindings(tr("The evidence failed. Sign it to reprocess."));
        default: return withFindings(tr("Look at the load."));
        }
    }

    [[nodiscard]] QString action() const
    {
        switch (n_.kind) {
        case NeedKind::testNotRun: return tr("Start a test");
        case NeedKind::testNotRead:
        case NeedKind::biologicalDue: return tr("Read it");
        case NeedKind::review: return tr("Review it");
        case NeedKind::signature: return tr("Sign it");
        case NeedKind::printout:
        case NeedKind::otherEvidence: return tr("Complete it");
        case NeedKind::reading: return tr("Read them");
        case NeedKind::lotExpires: return tr("Look at the lot");
        default: return tr("Look at it");
        }
    }

    [[nodiscard]] QString at() const
    {
        return n_.at ? QString::fromStdString(sayTime(*n_.at, style_)) : QString();
    }

    [[nodiscard]] QString first() const
    {
        return n_.findings.empty() ? QString()
                                   : QString::fromStdString(say(n_.findings.front(), style_).says);
    }

    /// The first finding, how many more there are, or what is said where there is none.
    [[nodiscard]] QString withFindings(const QString& without) const
    {
        if (n_.findings.empty()) {
            return without;
        }
        const auto more = static_cast<int>(n_.findings.size()) - 1;
        return more == 0   ? first()
               : more == 1 ? tr("%1 And one more reason.").arg(first())
                           : tr("%1 And %2 more reasons.").arg(first()).arg(more);
    }

    const Need& n_;
    const HouseStyle& style_;
};

} // namespace

NeedSaid say(const Need& need, const HouseStyle& style)
{
    return NeedSentences(need, style).said();
}

} // namespace loadwarden
