#include "ui/paper/sheets/load_record.h"

#include "core/cycle/limits.h"
#include "core/words/say_any_act.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/sheets/fact_line.h"
#include "ui/paper/sheets/load_parts.h"

#include <QStringList>

#include <algorithm>
#include <map>

namespace loadwarden::paper {
namespace {

/// What an indicator is to people, and to which item it belongs.
struct Known {
    QString name;     ///< behind a heading of its own
    QString inItem;   ///< before what was read, among the lines of its item
    std::string item; ///< it-; empty: of none
};

/// Facts about one thing.
struct Group {
    Runs head;
    std::vector<const Fact*> facts;
};

class Making {
public:
    Making(const CycleRecord& record, const House& house)
        : m_record(record),
          m_style(house.style),
          m_book(record.entries),
          m_sheet(frameOf(house, record.view.isTest() ? tr("Test record") : tr("Load record"),
                          lotText(record.view), record.view.now, record.head),
                  house.size)
    {
        learn();
        sort();
    }

    Pages make() &&
    {
        appendVerdicts(m_sheet, m_record, m_style);
        appendReasons(m_sheet, m_record.view, m_style);
        appendCycle(m_sheet, m_record, m_style);
        cycleFacts();
        groups(tr("Process challenge devices, biological indicators and controls"), m_indicators);
        groups(tr("Items"), m_items);
        signatures();
        notes();
        return std::move(m_sheet).pages();
    }

private:
    [[nodiscard]] NameOf nameOf() const
    {
        return [this](std::string_view id) { return m_record.names.of(id); };
    }

    /// What the indicators are, from what was said when they were placed.
    void learn()
    {
        const auto place = [this](const PlacedIndicator& indicator, const QString& where,
                                  std::string item) {
            m_known[indicator.id] = {tr("%1: %2").arg(where, text(say(indicator, nameOf()))), where,
                                     std::move(item)};
        };
        for (const Fact& fact : m_book.facts()) {
            for (const Entry* const version : fact.chain) {
                if (const auto* const item = std::get_if<ItemAdded>(&version->act)) {
                    const std::string id(version->subject("it"));
                    if (item->external) {
                        place(*item->external, tr("Outside indicator"), id);
                    }
                    for (const PlacedIndicator& internal : item->internals) {
                        place(internal,
                              internal.place.empty()
                                  ? tr("Inside indicator")
                                  : tr("Inside indicator, %1").arg(text(internal.place)),
                              id);
                    }
                } else if (const auto* const pcd = std::get_if<PcdPlaced>(&version->act)) {
                    const QString mark = pcd->mark.empty() ? tr("PCD") : text(pcd->mark);
                    for (const PlacedIndicator& indicator : pcd->indicators) {
                        place(indicator, tr("Chemical, in %1").arg(mark), {});
                    }
                    for (const PlacedIndicator& vial : pcd->vials) {
                        place(vial, tr("Biological, in %1").arg(mark), {});
                    }
                } else if (const auto* const sheet = std::get_if<SheetPlaced>(&version->act)) {
                    place({std::string(version->subject("ci")), sheet->product, sheet->lot, {}},
                          tr("Sheet"), {});
                } else if (const auto* const control =
                               std::get_if<ControlPrepared>(&version->act)) {
                    place({std::string(version->subject("bc")), control->product, control->lot, {}},
                          tr("Control"), {});
                }
            }
        }
        const FoldedEvidence& folded = m_record.view.folded;
        for (std::size_t i = 0; i < folded.itemIds.size(); ++i) {
            m_labels[folded.itemIds[i]] = text(folded.record.load.items[i].label);
        }
    }

    void sort()
    {
        for (const Fact& fact : m_book.facts()) {
            const Entry& entry = *fact.origin;
            if (std::holds_alternative<EntryAnnotated>(entry.act)
                || std::holds_alternative<EntryVoided>(entry.act)) {
                m_notes.push_back(&fact);
            } else if (std::holds_alternative<DispositionSigned>(entry.act)
                       || std::holds_alternative<ReviewRecorded>(entry.act)
                       || std::holds_alternative<EmergencyReleased>(entry.act)) {
                m_signatures.push_back(&fact);
            } else if (const std::string_view item = itemOf(entry); !item.empty()) {
                groupOf(m_items, std::string(item), itemHead(std::string(item)))
                    .facts.push_back(&fact);
            } else if (const std::string_view thing = indicatorOf(entry); !thing.empty()) {
                groupOf(m_indicators, std::string(thing), strong(indicatorName(thing)))
                    .facts.push_back(&fact);
            } else {
                m_cycle.push_back(&fact);
            }
        }
    }

    [[nodiscard]] std::string_view itemOf(const Entry& entry) const
    {
        if (const std::string_view item = entry.subject("it"); !item.empty()) {
            return item;
        }
        const auto known = m_known.find(std::string(entry.subject("ci")));
        return known == m_known.end() ? std::string_view() : std::string_view(known->second.item);
    }

    static std::string_view indicatorOf(const Entry& entry)
    {
        if (std::holds_alternative<PcdPlaced>(entry.act)) {
            return entry.subject("pd");
        }
        for (const char* const prefix : {"bv", "bc", "ci"}) {
            if (const std::string_view id = entry.subject(prefix); !id.empty()) {
                return id;
            }
        }
        return {};
    }

    [[nodiscard]] QString indicatorName(std::string_view id) const
    {
        if (hasPrefix(id, "pd")) {
            return tr("PCD");
        }
        const auto known = m_known.find(std::string(id));
        return known == m_known.end() ? text(id) : known->second.name;
    }

    [[nodiscard]] Runs itemHead(const std::string& id) const
    {
        const auto label = m_labels.find(id);
        if (label == m_labels.end()) {
            return {{leftLabel(id), Face::struck},
                    {QStringLiteral(", ") + tr("not in the load"), Face::plain}};
        }
        Runs head = strong(label->second);
        const auto& ids = m_record.view.folded.itemIds;
        const auto index = static_cast<std::size_t>(std::ranges::find(ids, id) - ids.begin());
        if (index < m_record.view.decision.items.size()) {
            head.push_back({QStringLiteral(", ")
                                + tr("decided: %1")
                                      .arg(text(say(m_record.view.decision.items[index].verdict))),
                            Face::plain});
        }
        return head;
    }

    /// The label of an item that is not in the load any more.
    [[nodiscard]] QString leftLabel(const std::string& id) const
    {
        for (const std::uint32_t index : m_book.about(id)) {
            const Entry& entry = m_book.facts()[index].current();
            if (const auto* const added = std::get_if<ItemAdded>(&entry.act)) {
                return text(added->label);
            }
        }
        return text(id);
    }

    using Groups = std::vector<std::pair<std::string, Group>>;

    static Group& groupOf(Groups& groups, const std::string& id, const Runs& head)
    {
        const auto found = std::ranges::find(groups, id, &std::pair<std::string, Group>::first);
        return found != groups.end() ? found->second
                                     : groups.emplace_back(id, Group{head, {}}).second;
    }

    /// The limits of a reading's parameter, in the unit in which it was read where they have one.
    [[nodiscard]] QString limitText(const Fact& fact) const
    {
        const auto* const read = std::get_if<PhysicalRead>(&fact.current().act);
        const auto& specification = m_record.view.folded.record.specification;
        const Limit* const limit = read == nullptr || !specification
                                       ? nullptr
                                       : findLimit(*specification, read->parameter);
        if (limit == nullptr) {
            return {};
        }
        const Unit unit = read->value.value.unit;
        QStringList sides;
        if (const Quantity* const least = inUnit(limit->least, unit)) {
            sides << tr("at least %1").arg(text(sayQuantity(*least)));
        }
        if (const Quantity* const most = inUnit(limit->most, unit)) {
            sides << tr("at most %1").arg(text(sayQuantity(*most)));
        }
        return sides.join(QStringLiteral(", "));
    }

    static const Quantity* inUnit(const std::vector<Quantity>& values, Unit unit)
    {
        const auto same = std::ranges::find(values, unit, &Quantity::unit);
        return same != values.end() ? &*same : values.empty() ? nullptr : &values.front();
    }

    void cycleFacts()
    {
        if (m_cycle.empty()) {
            return;
        }
        Table table{.columns = {{tr("Cycle, printout"), 16},
                                {tr("Recorded"), 32},
                                {tr("Limits"), 14},
                                {tr("By whom and when"), 38}},
                    .rows = {}};
        for (const Fact* const fact : m_cycle) {
            FactLine line = lineOf(*fact, m_record.names, m_style);
            table.rows.push_back(
                {.cells = {line.what, line.value, plain(limitText(*fact)), line.who}});
        }
        m_sheet.space(points(4));
        m_sheet.table(table);
    }

    void groups(const QString& heading, const Groups& groups)
    {
        if (groups.empty()) {
            return;
        }
        m_sheet.section(heading);
        Table table{.columns = {{{}, 62}, {{}, 38}}, .rows = {}};
        for (const auto& [id, group] : groups) {
            bool isFirst = true;
            for (const Fact* const fact : group.facts) {
                FactLine line = lineOf(*fact, m_record.names, m_style);
                Runs said = saidOf(*fact, line, group.head);
                // What somebody did in one go is one line.
                if (!isFirst && table.rows.back().cells.back() == line.who) {
                    Runs& before = table.rows.back().cells.front();
                    before.push_back({QStringLiteral(".  "), Face::plain});
                    before.insert(before.end(), said.begin(), said.end());
                    continue;
                }
                if (isFirst) {
                    said.insert(said.begin(), {QStringLiteral(".  "), Face::plain});
                    said.insert(said.begin(), group.head.begin(), group.head.end());
                }
                table.rows.push_back({.cells = {said, line.who}, .beginsGroup = isFirst});
                isFirst = false;
            }
        }
        m_sheet.table(table);
    }

    /// What was said, behind what of the item it is about.
    [[nodiscard]] Runs saidOf(const Fact& fact, const FactLine& line, const Runs& head) const
    {
        // A control that its own heading says whole was just prepared.
        if (std::holds_alternative<ControlPrepared>(fact.origin->act) && fact.chain.size() == 1
            && !line.value.empty() && head.front().text.endsWith(line.value.front().text)) {
            return plain(tr("Prepared"));
        }
        Runs said = line.what;
        const auto known = m_known.find(std::string(fact.origin->subject("ci")));
        if (known != m_known.end() && !known->second.item.empty()
            && fact.origin->subject("it").empty()) {
            said.front().text = tr("%1: %2").arg(known->second.inItem, said.front().text.toLower());
        }
        if (!line.value.empty()) {
            said.push_back({QStringLiteral(": "), Face::plain});
            said.insert(said.end(), line.value.begin(), line.value.end());
        }
        return said;
    }

    void signatures()
    {
        m_sheet.section(tr("Reviews and signatures"));
        if (m_signatures.empty()) {
            m_sheet.paragraph(plain(tr("Nothing of this is reviewed or signed yet.")));
            return;
        }
        Table table{.columns = {{{}, 20}, {{}, 42}, {{}, 38}}, .rows = {}};
        for (const Fact* const fact : m_signatures) {
            FactLine line = lineOf(*fact, m_record.names, m_style);
            line.what.front().face = Face::strong;
            if (const QString grounds = groundsText(fact->origin->act); !grounds.isEmpty()) {
                line.value.push_back({u'\n' + grounds, Face::plain});
            }
            line.who.push_back(
                {u'\n' + tr("Signed with a PIN, entry %1").arg(fact->origin->seq), Face::plain});
            table.rows.push_back({.cells = {line.what, line.value, line.who}});
        }
        m_sheet.table(table);
    }

    /// By what a signer decided: the short forms of digests, of which the journal has the whole.
    static QString groundsText(const AnyAct& act)
    {
        const auto* const disposition = std::get_if<DispositionSigned>(&act);
        const auto* const emergency = std::get_if<EmergencyReleased>(&act);
        const SignedGrounds* const grounds = disposition != nullptr ? &disposition->grounds
                                             : emergency != nullptr ? &emergency->grounds
                                                                    : nullptr;
        if (grounds == nullptr) {
            return {};
        }
        QStringList keys;
        for (const SignedFinding& finding : grounds->findings) {
            keys << text(finding.key);
        }
        keys.removeDuplicates();
        constexpr std::size_t digits = 16;
        const QString by = tr("by evidence %1, policy %2, rules %3")
                               .arg(text(grounds->evidence.substr(0, digits)),
                                    text(grounds->policy.substr(0, digits)), text(grounds->rules));
        return keys.isEmpty()
                   ? by
                   : tr("on these findings: %1\n%2").arg(keys.join(QStringLiteral(", ")), by);
    }

    void notes()
    {
        if (m_notes.empty()) {
            return;
        }
        m_sheet.section(tr("Notes"));
        Table table{.columns = {{{}, 20}, {{}, 42}, {{}, 38}}, .rows = {}};
        for (const Fact* const fact : m_notes) {
            FactLine line = lineOf(*fact, m_record.names, m_style);
            if (fact->origin->supersedes != 0) {
                line.what.push_back(
                    {QStringLiteral(" ") + tr("to entry %1").arg(fact->origin->supersedes),
                     Face::plain});
            }
            if (!fact->origin->reason.empty()) {
                line.value.push_back(
                    {QStringLiteral(" ") + tr("Because: %1").arg(text(fact->origin->reason)),
                     Face::plain});
            }
            table.rows.push_back({.cells = {line.what, line.value, line.who}});
        }
        m_sheet.table(table);
    }

    const CycleRecord& m_record;
    const HouseStyle& m_style;
    FactBook m_book;
    Sheet m_sheet;
    std::map<std::string, Known> m_known;
    std::map<std::string, QString> m_labels;
    std::vector<const Fact*> m_cycle;
    Groups m_indicators;
    Groups m_items;
    std::vector<const Fact*> m_signatures;
    std::vector<const Fact*> m_notes;
};

} // namespace

Pages loadRecord(const CycleRecord& record, const House& house)
{
    return Making(record, house).make();
}

} // namespace loadwarden::paper
