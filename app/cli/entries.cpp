#include "app/cli/entries.h"

#include "core/quantities/json_text.h"

#include <algorithm>

namespace loadwarden::cli {

namespace {

/// What a review must name to answer a finding, as the evidence file has it.
std::string reviewFields(const Finding& finding, const Zone& zone)
{
    std::string text = "\"finding\":\"" + std::string(textOf(finding.key)) + "\", ";
    if (!finding.subject.empty()) {
        text += "\"subject\":";
        appendJsonString(text, finding.subject);
        text += ", ";
    }
    return text + "\"newestSeen\":\"" + formatAt(*finding.newest, zone.offsetAt(*finding.newest))
           + "\"";
}

bool saysTheSame(const Entry& a, const Entry& b)
{
    return a.key == b.key && a.outcome == b.outcome && a.forces == b.forces
           && a.said.says == b.said.says && a.said.next == b.said.next && a.reviews == b.reviews
           && a.items.empty() == b.items.empty();
}

std::string replaced(std::string text, std::string_view from, std::string_view to)
{
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) {
        text.replace(at, from.size(), to);
    }
    return text;
}

/// A load's finding on its implants, for which the items wait.
bool isOfImplants(Key key)
{
    return ruleOf(key) == ruleOf(Key::implantPending);
}

} // namespace

std::string ExplainedNotes::explainAt(const std::string& here, Key key, const Said& said)
{
    Explained& explained = m_explained[static_cast<std::size_t>(key)];
    std::string text = said.says + '\n' + said.next;
    if (explained.text == text) {
        return explained.place;
    }
    explained = {std::move(text), here};
    return {};
}

void Entries::add(const Finding& finding, bool forcesVerdict)
{
    Entry entry{.key = finding.key,
                .outcome = finding.outcome,
                .said = say(finding, m_style),
                .alsoOf = {},
                .reviews = {},
                .items = {},
                .forces = forcesVerdict,
                .brief = {}};
    if (finding.outcome == Outcome::review && finding.newest) {
        entry.reviews.push_back(reviewFields(finding, *m_style.zone));
    }
    if (finding.item >= 0) {
        entry.items.push_back(finding.item);
    }
    const auto same = std::ranges::find_if(
        m_gathered, [&](const Gathered& other) { return saysTheSame(other.entry, entry); });
    if (same != m_gathered.end()) {
        if (finding.item >= 0 && same->entry.items.back() != finding.item) {
            same->entry.items.push_back(finding.item);
        }
        return;
    }
    const bool isGeneral = finding.outcome == Outcome::note && !finding.reviewed && finding.item < 0
                           && finding.subject.empty();
    if (isGeneral) {
        const std::string place = m_explained.explainAt(m_place, finding.key, entry.said);
        if (!place.empty()) {
            entry.brief = "As explained above, at " + place + '.';
            entry.isAbove = true;
        }
    }
    std::string shape = shapeOf(finding, entry.said);
    m_gathered.push_back({std::move(entry), finding.subject, std::move(shape)});
}

/// Asks for the same sentence with a mark in the place of the subject. Where the subject does more
/// than to stand in it, the two differ in more, and it has no shape.
std::string Entries::shapeOf(const Finding& finding, const Said& said) const
{
    constexpr std::string_view mark = "\x1A"; // stands in no name
    if (finding.subject.empty()) {
        return {};
    }
    Finding marked = finding;
    marked.subject = mark;
    const Said shape = say(marked, m_style);
    if (replaced(said.says, finding.subject, mark) != shape.says
        || replaced(said.next, finding.subject, mark) != shape.next) {
        return {};
    }
    return shape.says + '\n' + shape.next;
}

/// Puts the later of two that differ in their subjects only into the earlier.
void Entries::mergeSubjects()
{
    for (auto first = m_gathered.begin(); first != m_gathered.end(); ++first) {
        const auto isSame = [&](const Gathered& other) {
            return !other.shape.empty() && other.shape == first->shape
                   && other.entry.key == first->entry.key
                   && other.entry.outcome == first->entry.outcome
                   && other.entry.forces == first->entry.forces
                   && other.entry.items == first->entry.items;
        };
        for (auto other = first + 1; other != m_gathered.end(); ++other) {
            if (isSame(*other)) {
                first->entry.alsoOf.push_back(other->subject);
                std::ranges::move(other->entry.reviews, std::back_inserter(first->entry.reviews));
            }
        }
        m_gathered.erase(std::remove_if(first + 1, m_gathered.end(), isSame), m_gathered.end());
    }
}

bool Entries::has(Key key) const
{
    return std::ranges::any_of(m_gathered,
                               [&](const Gathered& each) { return each.entry.key == key; });
}

/// What follows from a finding that is said already, and asks for nothing more, is said briefly.
void Entries::shorten(Entry& entry) const
{
    const bool implants = std::ranges::any_of(
        m_gathered, [](const Gathered& each) { return isOfImplants(each.entry.key); });
    if (entry.key == Key::itemImplantWaits && implants) {
        entry.brief =
            "This item is an implant, or is not recorded as none, and waits for what is said "
            "of the load's implants.";
    } else if (entry.key == Key::routinePending && entry.outcome == Outcome::note
               && has(Key::biIncubating)) {
        entry.brief =
            "The routine biological indicator (BI) is not final yet either. This load does "
            "not wait for it.";
    }
}

std::vector<Entry> Entries::take()
{
    mergeSubjects();
    for (Gathered& each : m_gathered) {
        shorten(each.entry);
    }
    std::vector<Entry> entries;
    for (Gathered& each : m_gathered) {
        entries.push_back(std::move(each.entry));
    }
    m_gathered.clear();
    std::ranges::stable_sort(entries, [](const Entry& a, const Entry& b) {
        return a.items.empty() != b.items.empty() ? a.items.empty() : a.outcome > b.outcome;
    });
    return entries;
}

} // namespace loadwarden::cli
