#include "core/release/rules/cycle_allowed.h"

#include "core/cycle/limits.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

/// Takes the lines of a comparison together: any no is no, else any unknown is unknown. Keeps what
/// the first no was about.
class Comparison {
public:
    void add(bool known, bool agrees, Cause about)
    {
        const Match line = !known ? Match::unknown : agrees ? Match::yes : Match::no;
        if (line == Match::no && m_match != Match::no) {
            m_firstNo = about;
        }
        m_match = std::min(m_match, line);
    }
    [[nodiscard]] Match match() const { return m_match; }
    [[nodiscard]] Cause firstNo() const { return m_firstNo; }

private:
    Match m_match = Match::yes;
    Cause m_firstNo = Cause::none;
};

/// One allowed cycle of a device against the settings of the program, not against its readings.
Comparison compare(const EvidenceRecord& record, const AllowedCycle& allowed,
                   std::int64_t temperatureToleranceUnits)
{
    const CycleSpecification& specification = *record.specification;
    const ProgramSettings& settings = specification.settings;
    const bool gas = isGas(allowed.method);
    const bool named = allowed.method != Method::unknown;
    Comparison lines;
    lines.add(named && specification.method != Method::unknown,
              allowed.method == specification.method, Cause::method);
    if (allowed.method == Method::steam) {
        lines.add(allowed.airRemoval != AirRemoval::unknown
                      && specification.airRemoval != AirRemoval::unknown,
                  allowed.airRemoval == specification.airRemoval, Cause::airRemoval);
    }
    if (named && (allowed.temperature || !gas)) {
        lines.add(allowed.apart.has_value(),
                  allowed.apart && allowed.apart->units() <= temperatureToleranceUnits,
                  Cause::temperature);
    }
    if (named && (allowed.leastMs || !gas)) {
        const bool known = allowed.leastMs && settings.exposureMs;
        lines.add(known, known && *settings.exposureMs >= *allowed.leastMs, Cause::exposureShort);
    }
    if (allowed.mostMs) {
        lines.add(settings.exposureMs.has_value(),
                  settings.exposureMs && *settings.exposureMs <= *allowed.mostMs,
                  Cause::exposureLong);
    }
    if (allowed.dryingMs) {
        lines.add(settings.dryingMs.has_value(),
                  settings.dryingMs && *settings.dryingMs >= *allowed.dryingMs, Cause::drying);
    }
    if (gas) {
        const std::string& program = specification.program;
        lines.add(isNamed(allowed.program) && isNamed(program), allowed.program == program,
                  Cause::program);
        const std::string_view model =
            record.sterilizer ? std::string_view(record.sterilizer->model) : "";
        lines.add(isNamed(allowed.sterilizerModel) && isNamed(model),
                  allowed.sterilizerModel == model, Cause::model);
    }
    return lines;
}

bool noneRecorded(const Item& item)
{
    for (const Device& device : item.devices) {
        if (device.allowedCycles.empty()) {
            return true;
        }
    }
    return item.devices.empty();
}

/// How an allowed cycle matches, the policy's tolerance counted in.
Match matchOf(const View& view, const AllowedCycle& allowed)
{
    const bool near =
        !allowed.apart || allowed.apart->units() <= view.policy.temperatureToleranceUnits;
    return near ? allowed.match : Match::no;
}

} // namespace

void compareAllowed(EvidenceRecord& record)
{
    const CycleSpecification& specification = *record.specification;
    const auto& set = specification.settings.temperature;
    for (Item& item : record.load.items) {
        for (Device& device : item.devices) {
            for (AllowedCycle& allowed : device.allowedCycles) {
                allowed.apart.reset();
                if (allowed.method != Method::unknown && allowed.temperature && set) {
                    allowed.apart =
                        (temperatureOf(*allowed.temperature) - temperatureOf(*set)).magnitude();
                }
                allowed.match = compare(record, allowed, INT64_MAX).match();
            }
        }
    }
}

void cycleAllowed(const View& view, std::size_t index, FindingSink& sink)
{
    const Item& item = view.load.items[index];
    if (noneRecorded(item)) {
        const bool standard = view.method == Method::steam && view.purpose == Purpose::routine
                              && !view.specification->extended && item.implant == Implant::no;
        sink.add(Key::itemCycleNoneRecorded, standard ? Outcome::note : Outcome::waits);
    }
    for (const Device& device : item.devices) {
        if (device.allowedCycles.empty()) {
            continue;
        }
        Match best = Match::no;
        for (const AllowedCycle& allowed : device.allowedCycles) {
            best = std::max(best, matchOf(view, allowed));
        }
        if (best == Match::unknown) {
            sink.add(Key::itemCycleValueMissing, Outcome::waits, device.name);
        } else if (best == Match::no) {
            sink.add(Key::itemCycleNotAllowed, Outcome::fails, device.name).cause =
                compare(view.evidence.record, device.allowedCycles.front(),
                        view.policy.temperatureToleranceUnits)
                    .firstNo();
        }
    }
    if (view.specification->extended) {
        sink.add(Key::itemCycleExtended, Outcome::note);
    }
}

} // namespace loadwarden::rules
