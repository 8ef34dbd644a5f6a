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
        case NeedKind::lotRecalled: return tr("Lot recalled");
        case NeedKind::failed: return tr("Failed");
        case NeedKind::testFailed: return tr("Air-removal test failed");
        case NeedKind::testNotRun: return tr("Air-removal test not run");
        case NeedKind::testNotRead: return tr("Air-removal test not read");
        case NeedKind::controlDead: return tr("Control did not grow");
        case NeedKind::biologicalDue: return tr("Biological indicator due");
        case NeedKind::evidenceChanged: return tr("Evidence changed since signed");
        case NeedKind::review: return tr("Waits for a review");
        case NeedKind::printout: return tr("Printout incomplete");
        case NeedKind::reading:
            return isSecondLook() ? tr("Unclear: a second reader is needed")
                                  : tr("Readings missing");
        case NeedKind::otherEvidence: return tr("Record incomplete");
        case NeedKind::aerating: return tr("Aerating");
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
            return tr("%1 Find out where its items are, and have it signed anew.")
                .arg(withFindings(tr("The evidence is worse than what was signed.")));
        case NeedKind::evidenceChanged:
            return tr("What was recorded after the signature makes it no worse. Look at it again.");
        case NeedKind::signature:
            if (n_.behind > 0) {
                return tr("The load's evidence is there and good. Items of it that stay behind: "
                          "%1.")
                    .arg(n_.behind);
            }
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
        case NeedKind::biologicalComing:
        case NeedKind::aerating: return first();
        case NeedKind::lotRecalled:
            return tr("%1, lot %2, recalled on %3: nothing of it counts, also where it was read "
                      "before. Find its loads by the product's lot, and what of them is released.")
                .arg(QString::fromStdString(n_.name), QString::fromStdString(n_.lot), at());
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
        case NeedKind::otherEvidence:
        case NeedKind::printout: return tr("Complete it");
        case NeedKind::reading: return isSecondLook() ? tr("Have it read again") : tr("Read them");
        case NeedKind::lotRecalled: return tr("Find its loads");
        case NeedKind::lotExpires: return tr("Look at the lot");
        default: return tr("Look at it");
        }
    }

    /// Whether what comes first is an unclear answer of an indicator.
    [[nodiscard]] bool isSecondLook() const
    {
        if (n_.findings.empty()) {
            return false;
        }
        switch (n_.findings.front().key) {
        case Key::pcdUnclear:
        case Key::itemExternalUnclear:
        case Key::itemInternalUnclear: return true;
        default: return false;
        }
    }

    [[nodiscard]] QString at() const
    {
        return n_.at ? QString::fromStdString(sayTime(*n_.at, style_)) : QString();
    }

    [[nodiscard]] QString first() const
    {
        return n_.findings.empty()
                   ? QString()
                   : QString::fromStdString(say(named(n_.findings.front()), style_).says);
    }

    /// A finding whose subject says where the thing is.
    [[nodiscard]] Finding named(Finding finding) const
    {
        for (const NeedPart& part : n_.parts) {
            if (part.id == finding.subject) {
                finding.subject =
                    (part.id.starts_with("pd-")
                         ? (part.pcdMark.empty() ? tr("without a mark")
                                                 : QString::fromStdString(part.pcdMark))
                     : part.pcdMark.empty()
                         ? tr("in the PCD")
                         : tr("in PCD %1").arg(QString::fromStdString(part.pcdMark)))
                        .toStdString();
                break;
            }
        }
        return finding;
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
