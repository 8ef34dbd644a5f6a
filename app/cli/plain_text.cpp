#include "app/cli/plain_text.h"

#include "app/cli/paragraph.h"
#include "core/quantities/json_text.h"
#include "core/words/say.h"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <vector>

namespace loadwarden::cli {

namespace {

/// What is said, once, of the load or of the items of which it is true.
struct Entry {
    Key key{};
    Outcome outcome{};
    Said said;
    std::string review;              ///< fields of the review that would answer it; empty: none can
    std::vector<std::int32_t> items; ///< none: the load
    bool forces = false;             ///< the verdict of its load or items

    bool saysTheSame(const Entry& other) const
    {
        return key == other.key && outcome == other.outcome && forces == other.forces
               && said.says == other.said.says && said.next == other.said.next
               && review == other.review && items.empty() == other.items.empty();
    }
};

/// What a review must name to answer a finding, as the evidence file has it.
std::string reviewFields(const Finding& finding, const Zone& zone)
{
    if (finding.outcome != Outcome::review || !finding.newest) {
        return {};
    }
    std::string text = "\"finding\":\"" + std::string(textOf(finding.key)) + "\", ";
    if (!finding.subject.empty()) {
        text += "\"subject\":";
        appendJsonString(text, finding.subject);
        text += ", ";
    }
    return text + "\"newestSeen\":\"" + formatAt(*finding.newest, zone.offsetAt(*finding.newest))
           + "\"";
}

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

/// Gathers findings; the load's before the items', each from the worst outcome on.
class Entries {
public:
    explicit Entries(const HouseStyle& style) : m_style(style) {}

    void add(const Finding& finding, bool forcesVerdict)
    {
        Entry entry{.key = finding.key,
                    .outcome = finding.outcome,
                    .said = say(finding, m_style),
                    .review = reviewFields(finding, *m_style.zone),
                    .items = {},
                    .forces = forcesVerdict};
        if (finding.item >= 0) {
            entry.items.push_back(finding.item);
        }
        const auto same = std::ranges::find_if(
            m_entries, [&](const Entry& other) { return other.saysTheSame(entry); });
        if (same == m_entries.end()) {
            m_entries.push_back(std::move(entry));
        } else if (finding.item >= 0 && same->items.back() != finding.item) {
            same->items.push_back(finding.item);
        }
    }

    std::vector<Entry> take()
    {
        std::ranges::stable_sort(m_entries, [](const Entry& a, const Entry& b) {
            return a.items.empty() != b.items.empty() ? a.items.empty() : a.outcome > b.outcome;
        });
        return std::move(m_entries);
    }

private:
    HouseStyle m_style;
    std::vector<Entry> m_entries;
};

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
            } else if (last->said.next != entry.said.next) {
                next(*last);
            }
            last = &entry;
            const bool isNote = entry.outcome == Outcome::note; // as the heading says
            appendParagraph(m_out, 2, isNote ? "- " : "- " + say(entry.outcome) + ": ",
                            entry.said.says + " [" + std::string(textOf(entry.key)) + "]", 2);
            if (!entry.items.empty()) {
                appendParagraph(m_out, 4, entry.items.size() == 1 ? "Item: " : "Items: ",
                                namesOf(entry.items), 4);
            }
            if (!entry.review.empty()) {
                appendParagraph(m_out, 4, "The review names ", entry.review, 4);
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
        std::string text;
        for (const std::int32_t item : items) {
            text += text.empty() ? "" : "; ";
            text += m_items[static_cast<std::size_t>(item)].label;
        }
        return text;
    }

private:
    void next(const Entry& entry)
    {
        if (!entry.said.next.empty()) {
            appendParagraph(m_out, 4, "Next: ", entry.said.next, 6);
        }
    }

    std::string& m_out;
    const std::vector<Entry>& m_entries;
    const std::vector<ItemDecision>& m_items;
};

void appendHead(std::string& out, const Occasion& occasion, std::string_view what,
                std::string_view lot, std::string_view verdict, const HouseStyle& style)
{
    std::string title = occasion.record + ", " + std::string(what)
                        + (lot.empty() ? "without a lot number" : std::string(lot)) + ": ";
    appendParagraph(out, 0, "", title + std::string(verdict), 2);
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

std::string verdictText(const Decision& decision)
{
    const auto worse = static_cast<std::size_t>(
        std::count_if(decision.items.begin(), decision.items.end(),
                      [&](const ItemDecision& item) { return item.verdict != decision.verdict; }));
    return say(decision.verdict)
           + (worse == 0 ? "" : ", except " + countText(worse, "item", "items"));
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

void appendPlain(std::string& out, const Decision& decision, const Occasion& occasion)
{
    const HouseStyle style{.zone = occasion.zone};
    Entries gathered(style);
    for (const Finding& finding : decision.findings) {
        const Verdict verdict =
            finding.item < 0 ? decision.verdict
                             : decision.items[static_cast<std::size_t>(finding.item)].verdict;
        gathered.add(finding, forces(finding.outcome, verdict));
    }
    const std::vector<Entry> entries = gathered.take();
    Block block(out, entries, decision.items);
    appendHead(out, occasion, "load ", decision.lot, verdictText(decision), style);
    if (decision.nextChangeAt) {
        out +=
            "  Time alone changes this at " + sayNotBefore(*decision.nextChangeAt, style) + ".\n";
    }
    appendItems(out, decision, block);
    appendReasons(out, block, entries.empty());
}

void appendPlain(std::string& out, const TestJudgement& judgement, const Occasion& occasion)
{
    const HouseStyle style{.zone = occasion.zone};
    Entries gathered(style);
    for (const Finding& finding : judgement.findings) {
        gathered.add(finding, forces(finding.outcome, judgement.result));
    }
    const std::vector<Entry> entries = gathered.take();
    const std::vector<ItemDecision> noItems;
    Block block(out, entries, noItems);
    appendHead(out, occasion, "test ", judgement.lot, say(judgement.result), style);
    appendReasons(out, block, entries.empty());
}

} // namespace loadwarden::cli
