#include "core/desk/further_acts.h"

#include "core/acts/fold/facts.h"

#include <algorithm>
#include <set>

namespace loadwarden {
namespace {

bool hasGrown(const SheetIndicator& vial)
{
    return std::ranges::any_of(vial.readings, [](const SheetReading& reading) {
        return reading.seen == Seen::growth && !reading.isStruck;
    });
}

class Collector {
public:
    explicit Collector(const LoadSheet& sheet) : m_sheet(sheet), m_book(sheet.record.entries) {}

    std::vector<FurtherChoice> all()
    {
        const bool isLoad = !m_sheet.view().isTest();
        if (isLoad && !m_sheet.state.started) {
            offer(Further::moveItem, items([](const SheetItem&) { return true; }));
        }
        offer(Further::confirmItem, itemsWith({Key::itemRecordedLate, Key::itemInTwoLoads}));
        if (m_sheet.state.started) {
            offer(Further::classAlarm, alarms());
        }
        if (m_sheet.state.ended) {
            offerOfEnded(isLoad);
        }
        return std::move(m_all);
    }

private:
    void offer(Further what, std::vector<Choice> of)
    {
        if (!of.empty()) {
            m_all.push_back({what, std::move(of)});
        }
    }

    void offerOfEnded(bool isLoad)
    {
        offer(Further::loseCheck, itemsWith({Key::itemNotChecked}));
        if (!says<PrintoutRecorded>() && !says<PrintoutLost>()) {
            m_all.push_back({Further::losePrintout, {}});
        }
        offer(Further::loseParameter, unreadParameters());
        offer(Further::rereadIndicator, indicators([](const SheetIndicator& each) {
                  return each.newestReading() != nullptr && !each.awaitsReading();
              }));
        offer(Further::unsettle,
              indicators([](const SheetIndicator& each) { return !each.unclearTo().empty(); }));
        m_all.push_back({Further::recordFailure, {}});
        m_all.push_back({Further::resolveFailure, {}});
        offerOfPositives();
        if (isLoad) {
            const auto isReleased = [this](const SheetItem& item) {
                const auto found = m_sheet.state.released.find(item.id);
                return found != m_sheet.state.released.end() && found->second;
            };
            offer(Further::distribute, items([&](const SheetItem& item) {
                      return isReleased(item) && !says<ItemDistributed>(item.id);
                  }));
            // Also of what nobody released: that it was used has to be known.
            offer(Further::use,
                  items([this](const SheetItem& item) { return !says<ItemUsed>(item.id); }));
            offer(Further::takeBack, items([this](const SheetItem& item) {
                      return says<ItemDistributed>(item.id) && !says<ItemReturned>(item.id);
                  }));
        }
    }

    /// Incidents are of the load whose vial grew; where it is closed, nothing is to be found any
    /// more.
    void offerOfPositives()
    {
        std::vector<Choice> grown;
        for (const SheetIndicator& each : m_sheet.indicators) {
            if (each.isVial && hasGrown(each)) {
                grown.push_back({each.id, {}});
            }
        }
        if (grown.empty()) {
            return;
        }
        const std::vector<Choice> open = incidents();
        if (open.empty()) {
            m_all.push_back({Further::openIncident, {}});
            return;
        }
        if (!isClosed()) {
            offer(Further::findIncident, std::move(grown));
            offer(Further::closeIncident, open);
        }
    }

    [[nodiscard]] std::vector<Choice> incidents() const
    {
        std::vector<Choice> found;
        for (const std::uint32_t index : m_book.about(m_sheet.view().id)) {
            const Fact& fact = m_book.facts()[index];
            if (fact.stands() && std::holds_alternative<IncidentOpened>(fact.current().act)) {
                const std::string id(fact.origin->subject("ic"));
                found.push_back({id, m_sheet.view().lot()});
            }
        }
        return found;
    }

    [[nodiscard]] bool isClosed() const
    {
        const auto& sterilizer = m_sheet.view().folded.record.sterilizer;
        return sterilizer
               && std::ranges::any_of(sterilizer->incidents, [this](const Incident& each) {
                      return each.positiveLot == m_sheet.view().lot() && !each.closings.empty();
                  });
    }

    /// Whether such an act about the cycle, or about a part of it, stands.
    template <class Said>
    [[nodiscard]] bool says(std::string_view about = {}) const
    {
        const std::string_view id = about.empty() ? std::string_view(m_sheet.view().id) : about;
        return std::ranges::any_of(m_book.about(id), [&](std::uint32_t index) {
            const Fact& fact = m_book.facts()[index];
            return fact.stands() && std::holds_alternative<Said>(fact.current().act);
        });
    }

    template <class Wanted>
    [[nodiscard]] std::vector<Choice> items(Wanted wanted) const
    {
        std::vector<Choice> found;
        for (const SheetItem& item : m_sheet.items) {
            if (wanted(item)) {
                found.push_back({item.id, item.label});
            }
        }
        return found;
    }

    [[nodiscard]] std::vector<Choice> itemsWith(const std::set<Key>& keys) const
    {
        std::vector<Choice> found;
        for (const Finding& finding : m_sheet.view().decision.findings) {
            const auto index = static_cast<std::size_t>(finding.item);
            if (finding.item < 0 || index >= m_sheet.items.size() || !keys.contains(finding.key)
                || finding.outcome == Outcome::note) {
                continue;
            }
            const SheetItem& item = m_sheet.items[index];
            if (std::ranges::find(found, item.id, &Choice::id) == found.end()) {
                found.push_back({item.id, item.label});
            }
        }
        return found;
    }

    template <class Wanted>
    [[nodiscard]] std::vector<Choice> indicators(Wanted wanted) const
    {
        std::vector<Choice> found;
        for (const SheetIndicator& each : m_sheet.indicators) {
            if (!each.isVial && !each.isStruck && wanted(each)) {
                found.push_back({each.id, {}}); // where it is, is said in words
            }
        }
        return found;
    }

    [[nodiscard]] std::vector<Choice> unreadParameters() const
    {
        std::vector<Choice> found;
        for (const SheetParameter& each : m_sheet.parameters) {
            if (each.readings.empty() && !each.isLost) {
                found.push_back({std::to_string(static_cast<int>(each.parameter)), {}});
            }
        }
        return found;
    }

    [[nodiscard]] std::vector<Choice> alarms() const
    {
        std::vector<Choice> found;
        for (const std::uint32_t index : m_book.about(m_sheet.view().id)) {
            const Fact& fact = m_book.facts()[index];
            const auto* const alarm = std::get_if<AlarmRecorded>(&fact.current().act);
            if (alarm != nullptr && fact.stands()
                && std::ranges::find(found, alarm->code, &Choice::id) == found.end()) {
                found.push_back({alarm->code, alarm->code});
            }
        }
        return found;
    }

    const LoadSheet& m_sheet;
    FactBook m_book;
    std::vector<FurtherChoice> m_all;
};

} // namespace

std::vector<FurtherChoice> furtherActs(const LoadSheet& sheet)
{
    return sheet.view().isImported() ? std::vector<FurtherChoice>() : Collector(sheet).all();
}

} // namespace loadwarden
