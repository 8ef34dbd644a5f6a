#include "app/cli/plain_text.h"

#include "app/cli/paragraph.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <vector>

namespace loadwarden::cli {

namespace {

bool forces(Outcome outcome, Verdict verdict)
{
    switch (verdict) {
    case Verdict::reprocess: return outcome == Outcome::fails;
    case Verdict::quarantine: return outcome == Outcome::review || outcome == Outcome::waits;
    case Verdict::release: break;
    }
    return false;
}

bool forces(Outcome outcome, TestResult result)
{
    return result == TestResult::failed ? outcome == Outcome::fails : outcome != Outcome::note;
}

std::string countText(std::size_t count, const char* one, const char* many)
{
    return std::to_string(count) + ' ' + (count == 1 ? one : many);
}

class Block {
public:
    Block(std::string& out, const std::vector<Entry>& entries,
          const std::vector<ItemDecision>& items)
        : m_out(out), m_entries(entries), m_items(items)
    {
    }

    /// The entries of a section under its heading; what is to be done is said once for those that
    /// follow each other and ask the same.
    template <class IsOfSection>
    void section(std::string_view heading, IsOfSection isOfSection)
    {
        const Entry* last = nullptr;
        for (const Entry& entry : m_entries) {
            if (!isOfSection(entry)) {
                continue;
            }
            if (last == nullptr) {
                m_out += "\n  ";
                m_out += heading;
                m_out += '\n';
            } else if (nextOf(*last) != nextOf(entry)) {
                next(*last);
            }
            last = &entry;
            const bool isNote = entry.outcome == Outcome::note; // as the heading says
            appendParagraph(m_out, 2, isNote ? "- " : "- " + say(entry.outcome) + ": ",
                            (entry.brief.empty() ? entry.said.says : entry.brief) + " ["
                                + std::string(textOf(entry.key)) + "]",
                            2);
            if (!entry.alsoOf.empty()) {
                appendParagraph(m_out, 4, "The same of: ", joined(entry.alsoOf), 4);
            }
            if (!entry.items.empty()) {
                appendParagraph(m_out, 4, entry.items.size() == 1 ? "Item: " : "Items: ",
                                namesOf(entry.items), 4);
            }
            for (const std::string& review : entry.reviews) {
                appendParagraph(m_out, 4, "The review names ", review, 4);
            }
        }
        if (last != nullptr) {
            next(*last);
        }
    }

    void sources()
    {
        std::vector<std::pair<std::string_view, std::string>> sources; // source, keys
        for (const Entry& entry : m_entries) {
            if (entry.isAbove) {
                continue;
            }
            const std::string key(textOf(entry.key));
            const auto same = std::ranges::find(sources, std::string_view(entry.said.source),
                                                &decltype(sources)::value_type::first);
            if (same == sources.end()) {
                sources.emplace_back(entry.said.source, key);
            } else if ((", " + same->second + ",").find(", " + key + ",") == std::string::npos) {
                same->second += ", " + key;
            }
        }
        if (!sources.empty()) {
            m_out += "\n  Sources:\n";
        }
        for (const auto& [source, keys] : sources) {
            appendParagraph(m_out, 2, "- ", std::string(source) + " [" + keys + "]", 2);
        }
    }

    std::string namesOf(const std::vector<std::int32_t>& items) const
    {
        if (items.size() == m_items.size() && items.size() > 1) {
            return "all " + std::to_string(items.size());
        }
        std::vector<std::string> labels;
        for (const std::int32_t item : items) {
            labels.push_back(m_items[static_cast<std::size_t>(item)].label);
        }
        return joined(labels);
    }

private:
    static std::string joined(const std::vector<std::string>& names)
    {
        std::string text;
        for (const std::string& name : names) {
            text += (text.empty() ? "" : "; ") + name;
        }
        return text;
    }

    /// What is said briefly asks for nothing of its own.
    static std::string_view nextOf(const Entry& entry)
    {
        return entry.brief.empty() ? std::string_view(entry.said.next) : std::string_view();
    }

    void next(const Entry& entry)
    {
        if (!nextOf(entry).empty()) {
            appendParagraph(m_out, 4, "Next: ", nextOf(entry), 6);
        }
    }

    std::string& m_out;
    const std::vector<Entry>& m_entries;
    const std::vector<ItemDecision>& m_items;
};

/// "load L1": the record by its lot.
std::string nameOf(std::string_view what, std::string_view lot)
{
    return std::string(what) + (lot.empty() ? "without a lot number" : std::string(lot));
}

void appendHead(std::string& out, const Occasion& occasion, const std::string& name,
                std::string_view verdict, const HouseStyle& style)
{
    appendParagraph(out, 0, "", occasion.record + ", " + name + ": " + std::string(verdict), 2);
    out += "  As of " + sayTime(occasion.now, style) + ", " + occasion.zone.name() + ".\n";
}

/// A moment in local time, up to a minute late and never early.
std::string sayNotBefore(Instant moment, const HouseStyle& style)
{
    constexpr std::int64_t minute = 60'000;
    const Instant rounded{(moment.ms + minute - 1) / minute * minute};
    return sayTime(rounded, style);
}

/// The items by their verdicts, the worst first; those that are as the load are only counted.
void appendItems(std::string& out, const Decision& decision, const Block& block)
{
    std::map<Verdict, std::vector<std::int32_t>, std::greater<>> byVerdict;
    for (std::size_t i = 0; i < decision.items.size(); ++i) {
        byVerdict[decision.items[i].verdict].push_back(static_cast<std::int32_t>(i));
    }
    for (const auto& [verdict, items] : byVerdict) {
        if (verdict == decision.verdict) {
            const bool all = items.size() == decision.items.size();
            appendParagraph(
                out, 2, say(verdict) + ": ",
                countText(items.size(), all ? "item" : "other item", all ? "items" : "other items"),
                4);
        } else {
            appendParagraph(out, 2, say(verdict) + ": ", block.namesOf(items), 4);
        }
    }
}

/// The load's verdict, and how many items may not go with it.
std::string verdictText(const Decision& decision)
{
    const auto worse = static_cast<std::size_t>(
        std::count_if(decision.items.begin(), decision.items.end(),
                      [&](const ItemDecision& item) { return item.verdict != decision.verdict; }));
    const std::string verdict = say(decision.verdict);
    if (worse == 0) {
        return verdict;
    }
    if (worse < decision.items.size()) {
        return verdict + ", except " + countText(worse, "item", "items");
    }
    const std::string items =
        worse == 1 ? "its only item" : "none of its " + std::to_string(worse) + " items";
    if (decision.verdict == Verdict::release) {
        return verdict + ", but " + items + (worse == 1 ? " may not go" : " may go");
    }
    return verdict + ", but all its items: " + say(Verdict::reprocess);
}

void appendReasons(std::string& out, Block& block, bool isEmpty)
{
    if (isEmpty) {
        out += "  Nothing speaks against it.\n";
    }
    block.section("Why:", [](const Entry& e) { return e.forces; });
    block.section("Also open:",
                  [](const Entry& e) { return !e.forces && e.outcome != Outcome::note; });
    block.section("Notes:", [](const Entry& e) { return e.outcome == Outcome::note; });
    block.sources();
    out += '\n';
}

} // namespace

void appendPlain(std::string& out, const Decision& decision, const Occasion& occasion,
                 ExplainedNotes& explained)
{
    const HouseStyle style{.zone = occasion.zone};
    const std::string name = nameOf("load ", decision.lot);
    Entries gathered(style, occasion.record + ", " + name, explained);
    for (const Finding& finding : decision.findings) {
        const Verdict verdict =
            finding.item < 0 ? decision.verdict
                             : decision.items[static_cast<std::size_t>(finding.item)].verdict;
        gathered.add(finding, forces(finding.outcome, verdict));
    }
    const std::vector<Entry> entries = gathered.take();
    Block block(out, entries, decision.items);
    appendHead(out, occasion, name, verdictText(decision), style);
    if (decision.nextChangeAt) {
        out +=
            "  Time alone changes this at " + sayNotBefore(*decision.nextChangeAt, style) + ".\n";
    }
    appendItems(out, decision, block);
    appendReasons(out, block, entries.empty());
}

void appendPlain(std::string& out, const TestJudgement& judgement, const Occasion& occasion,
                 ExplainedNotes& explained)
{
    const HouseStyle style{.zone = occasion.zone};
    const std::string name = nameOf("test ", judgement.lot);
    Entries gathered(style, occasion.record + ", " + name, explained);
    for (const Finding& finding : judgement.findings) {
        gathered.add(finding, forces(finding.outcome, judgement.result));
    }
    const std::vector<Entry> entries = gathered.take();
    const std::vector<ItemDecision> noItems;
    Block block(out, entries, noItems);
    appendHead(out, occasion, name, say(judgement.result), style);
    appendReasons(out, block, entries.empty());
}

} // namespace loadwarden::cli
