#include "core/words/say_tray.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

class TraySentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    TraySentences(const TraySheet& tray, const HouseStyle& style) : t_(tray), style_(style) {}

    [[nodiscard]] TraySaid said() const
    {
        TraySaid said{
            answer(t_.answer()).toStdString(), why().toStdString(), next().toStdString(), {}};
        if (t_.answer() != TrayAnswer::mayNot) {
            said.checks = checks();
        }
        return said;
    }

    [[nodiscard]] static TraySaid unknown()
    {
        return {answer(TrayAnswer::mayNot).toStdString(),
                tr("No item with this label is in the journal.").toStdString(),
                tr("Look at the label again and type it as it is written. If it is right, the tray "
                   "was never recorded here: ask the lead of sterile processing, and do not use it "
                   "until its record is found.")
                    .toStdString(),
                {}};
    }

private:
    static QString answer(TrayAnswer answer)
    {
        switch (answer) {
        case TrayAnswer::mayBeUsed: return tr("May be used");
        case TrayAnswer::askLead: return tr("Ask the lead first");
        case TrayAnswer::mayNot: return tr("May not be used");
        }
        return {};
    }

    [[nodiscard]] QString lot() const { return QString::fromStdString(t_.lot); }

    [[nodiscard]] QString signer() const
    {
        return !t_.signature ? QString()
                             : tr("%1 on %2", "a name, a time")
                                   .arg(QString::fromStdString(t_.signature->name),
                                        QString::fromStdString(sayTime(t_.signature->at, style_)));
    }

    [[nodiscard]] QString why() const
    {
        switch (t_.stand) {
        case TrayStand::imported:
            return tr("Only an old record tells of load %1. Nothing was decided about it here.")
                .arg(lot());
        case TrayStand::inTest:
            return tr("It was in %1, a test cycle. What is in a test is not sterilized for use.")
                .arg(lot());
        case TrayStand::leftLoad:
            return tr("It was taken out of load %1 before the cycle, and is in no other.")
                .arg(lot());
        case TrayStand::notSterilized: return tr("The cycle of load %1 has not ended.").arg(lot());
        case TrayStand::used:
            return t_.caseReference.empty() ? tr("It was recorded as used.")
                                            : tr("It was recorded as used (%1).")
                                                  .arg(QString::fromStdString(t_.caseReference));
        case TrayStand::fails: return tr("It is to be reprocessed. %1").arg(mostSerious());
        case TrayStand::emergency:
            return tr("It was released in an emergency, before its biological indicator (BI) had "
                      "answered, for one case only: %1. Signed by %2.")
                .arg(QString::fromStdString(t_.caseReference), signer());
        case TrayStand::waits:
            return tr("Load %1 is not released: something is still missing. %2")
                .arg(lot(), mostSerious());
        case TrayStand::notSigned:
            return tr("All evidence of load %1 is there and good, but nobody has signed its "
                      "release.")
                .arg(lot());
        case TrayStand::signedHeld:
            return tr("It was not released when load %1 was signed by %2.").arg(lot(), signer());
        case TrayStand::worseSince:
            return tr("It was released by %1, and the evidence is worse since. %2")
                .arg(signer(), mostSerious());
        case TrayStand::changedSince:
            return tr("It was released by %1. Something was recorded about its load since; by the "
                      "rules that makes it no worse, and nobody has signed that yet.")
                .arg(signer());
        case TrayStand::notUnderstood:
            return tr("It was released by %1, but the journal holds entries about it that this "
                      "version of the program does not know.")
                .arg(signer());
        case TrayStand::released:
            return tr("It was released with load %1, signed by %2, and all that is recorded still "
                      "holds.")
                .arg(lot(), signer());
        }
        return {};
    }

    [[nodiscard]] QString next() const
    {
        switch (t_.stand) {
        case TrayStand::released:
            return tr("Check it on opening, as below. If anything is wrong with the package or an "
                      "indicator, do not use it, and report it to sterile processing at once.");
        case TrayStand::imported:
            return tr("Ask the lead, who looks at the old record and at the package.");
        case TrayStand::inTest:
        case TrayStand::leftLoad:
        case TrayStand::used: return tr("Send it back to be reprocessed.");
        case TrayStand::notSterilized:
        case TrayStand::waits:
        case TrayStand::notSigned:
            return tr("Leave it where it is held. Ask the lead when it will be released, and "
                      "whether another set is ready.");
        case TrayStand::fails:
        case TrayStand::signedHeld:
        case TrayStand::worseSince:
            return tr("Do not open it. Put it aside, say where it is to the lead, and ask for "
                      "another set. If it was opened or used already, say so at once.");
        case TrayStand::emergency:
            return tr("The lead says whether it is for this case. Its biological indicator is "
                      "still to be read.");
        case TrayStand::changedSince:
        case TrayStand::notUnderstood:
            return tr("The lead looks at the record of the load and says whether it may be used.");
        }
        return {};
    }

    [[nodiscard]] QString mostSerious() const
    {
        return t_.findings.empty() ? QString()
                                   : QString::fromStdString(say(t_.findings.front(), style_).says);
    }

    // Common practice, no source; the makers' instructions for package and indicator come first.
    [[nodiscard]] static std::vector<std::string> checks()
    {
        std::vector<std::string> all;
        for (const QString& each :
             {tr("The package is dry, whole, sealed or locked, without a hole, tear or stain."),
              tr("The label is that of the set, and nothing on it has passed its date."),
              tr("The external indicator has changed as its maker says. It shows that the package "
                 "was exposed, not that it is sterile."),
              tr("On opening: the internal indicator is there and reads as its maker says. Of a "
                 "moving front: it has entered the accept zone; it need not fill it."),
              tr("Nothing inside is wet, soiled or damaged.")}) {
            all.push_back(each.toStdString());
        }
        return all;
    }

    const TraySheet& t_;
    const HouseStyle& style_;
};

} // namespace

TraySaid say(const TraySheet& tray, const HouseStyle& style)
{
    return TraySentences(tray, style).said();
}

TraySaid sayUnknownTray()
{
    return TraySentences::unknown();
}

} // namespace loadwarden
