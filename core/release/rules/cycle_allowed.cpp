#include "core/cycle/limits.h"
#include "core/release/rules/rules.h"

#include <algorithm>
#include <cstdlib>

namespace loadwarden::rules {
namespace {

enum class Match : std::uint8_t { no, unknown, yes };

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
Comparison compare(const View& view, const AllowedCycle& allowed)
{
    const ProgramSettings& settings = view.specification->settings;
    const bool gas = isGas(allowed.method);
    const bool named = allowed.method != Method::unknown;
    Comparison lines;
    lines.add(named && view.method != Method::unknown, allowed.method == view.method,
              Cause::method);
    if (allowed.method == Method::steam) {
        lines.add(allowed.airRemoval != AirRemoval::unknown
                      && view.airRemoval != AirRemoval::unknown,
                  allowed.airRemoval == view.airRemoval, Cause::airRemoval);
    }
    if (named && (allowed.temperature || !gas)) {
        const bool known = allowed.temperature && settings.temperature;
        lines.add(known,
                  known
                      && std::abs(temperatureUnits(*allowed.temperature)
                                  - temperatureUnits(*settings.temperature))
                             <= view.policy.temperatureToleranceUnits,
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
        const std::string& program = view.specification->program;
        lines.add(isNamed(allowed.program) && isNamed(program), allowed.program == program,
                  Cause::program);
        const std::string_view model =
            view.sterilizer != nullptr ? std::string_view(view.sterilizer->model) : "";
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

} // namespace

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
            best = std::max(best, compare(view, allowed).match());
        }
        if (best == Match::unknown) {
            sink.add(Key::itemCycleValueMissing, Outcome::waits, device.name);
        } else if (best == Match::no) {
            sink.add(Key::itemCycleNotAllowed, Outcome::fails, device.name).cause =
                compare(view, device.allowedCycles.front()).firstNo();
        }
    }
    if (view.specification->extended) {
        sink.add(Key::itemCycleExtended, Outcome::note);
    }
}

} // namespace loadwarden::rules
