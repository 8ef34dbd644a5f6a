#include "core/cycle/limits.h"
#include "core/release/rules/rules.h"

#include <algorithm>
#include <cstdlib>

namespace loadwarden::rules {
namespace {

enum class Match : std::uint8_t { no, unknown, yes };

/// Takes the lines of a comparison together: any no is no, else any unknown is unknown.
class Comparison {
public:
    void add(Match line) { m_match = std::min(m_match, line); }
    void add(bool known, bool agrees)
    {
        add(!known ? Match::unknown : agrees ? Match::yes : Match::no);
    }
    [[nodiscard]] Match match() const { return m_match; }

private:
    Match m_match = Match::yes;
};

/// One allowed cycle of a device against the settings of the program, not against its readings.
Match compare(const View& view, const AllowedCycle& allowed)
{
    const ProgramSettings& settings = view.specification->settings;
    const bool gas = isGas(allowed.method);
    const bool named = allowed.method != Method::unknown;
    Comparison lines;
    lines.add(named && view.method != Method::unknown, allowed.method == view.method);
    if (allowed.method == Method::steam) {
        lines.add(allowed.airRemoval != AirRemoval::unknown
                      && view.airRemoval != AirRemoval::unknown,
                  allowed.airRemoval == view.airRemoval);
    }
    if (named && (allowed.temperature || !gas)) {
        const bool known = allowed.temperature && settings.temperature;
        lines.add(known, known
                             && std::abs(temperatureUnits(*allowed.temperature)
                                         - temperatureUnits(*settings.temperature))
                                    <= view.policy.temperatureToleranceUnits);
    }
    if (named && (allowed.leastMs || !gas)) {
        const bool known = allowed.leastMs && settings.exposureMs;
        lines.add(known, known && *settings.exposureMs >= *allowed.leastMs);
    }
    if (allowed.mostMs) {
        lines.add(settings.exposureMs.has_value(),
                  settings.exposureMs && *settings.exposureMs <= *allowed.mostMs);
    }
    if (allowed.dryingMs) {
        lines.add(settings.dryingMs.has_value(),
                  settings.dryingMs && *settings.dryingMs >= *allowed.dryingMs);
    }
    if (gas) {
        const std::string& program = view.specification->program;
        lines.add(!allowed.program.empty() && !program.empty(), allowed.program == program);
        const std::string_view model =
            view.sterilizer != nullptr ? std::string_view(view.sterilizer->model) : "";
        lines.add(!allowed.sterilizerModel.empty() && !model.empty(),
                  allowed.sterilizerModel == model);
    }
    return lines.match();
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
            best = std::max(best, compare(view, allowed));
        }
        if (best == Match::unknown) {
            sink.add(Key::itemCycleValueMissing, Outcome::waits, device.name);
        } else if (best == Match::no) {
            sink.add(Key::itemCycleNotAllowed, Outcome::fails, device.name);
        }
    }
    if (view.specification->extended) {
        sink.add(Key::itemCycleExtended, Outcome::note);
    }
}

} // namespace loadwarden::rules
