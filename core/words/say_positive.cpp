#include "core/words/say_positive.h"

#include <QCoreApplication>
#include <QString>

#include <algorithm>

namespace loadwarden {
namespace {

class PositiveSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    PositiveSentences(const BiPositive& positive, const HouseStyle& style)
        : p_(positive), style_(style)
    {
    }

    [[nodiscard]] PositiveSaid said() const
    {
        return {tr("Positive biological indicator (BI): load %1").arg(lot(p_.lot)).toStdString(),
                says().toStdString(), tell(), next()};
    }

private:
    static QString lot(const std::string& lot) { return QString::fromStdString(lot); }

    [[nodiscard]] QString says() const
    {
        return tr("Recorded %1, %2. It grew, or stayed unclear. Growth counts whatever else was "
                  "wrong with the test.")
            .arg(QString::fromStdString(sayTime(p_.since, style_)),
                 QString::fromStdString(p_.sterilizerName));
    }

    [[nodiscard]] bool hasReleased() const
    {
        return std::ranges::any_of(
            p_.held, [](const BiHeld& held) { return held.signedAs == Verdict::release; });
    }

    [[nodiscard]] bool hasImplant() const
    {
        return std::ranges::any_of(p_.held, [](const BiHeld& held) { return held.hasImplant; });
    }

    [[nodiscard]] std::vector<std::string> tell() const
    {
        std::vector<std::string> lines{tr("The supervisor.").toStdString(),
                                       tr("Infection prevention and control.").toStdString()};
        if (hasReleased()) {
            lines.push_back(
                tr("Whoever received items of the released loads: operating rooms, wards, clinics.")
                    .toStdString());
        }
        if (hasImplant()) {
            lines.push_back(tr("The surgeon, where an implant was used.").toStdString());
        }
        return lines;
    }

    [[nodiscard]] std::vector<std::string> next() const
    {
        std::vector<std::string> lines;
        lines.push_back((p_.isStopped ? tr("The sterilizer is taken out of service: leave it so.")
                                      : tr("Stop the sterilizer and record that it is taken out."))
                            .toStdString());
        lines.push_back(
            tr("Keep the loads named here, and fetch back what has left.").toStdString());
        lines.push_back(
            tr("Keep the vial and its control for whoever identifies what grew, as facility policy "
               "says.")
                .toStdString());
        lines.push_back(
            tr("Sign the load as reprocess; the others as facility policy says.").toStdString());
        lines.push_back(tr("Find the cause. The sterilizer goes back only after repair and the "
                           "tests that a supervisor signs.")
                            .toStdString());
        return lines;
    }

    const BiPositive& p_;
    const HouseStyle& style_;
};

} // namespace

PositiveSaid say(const BiPositive& positive, const HouseStyle& style)
{
    return PositiveSentences(positive, style).said();
}

} // namespace loadwarden
