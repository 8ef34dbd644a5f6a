#include "core/desk/history_import.h"

#include "core/acts/fold/imported.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/desk/recorder.h"
#include "core/store/finder.h"
#include "core/store/imported_lot.h"

#include <algorithm>
#include <map>
#include <utility>

namespace loadwarden {
namespace {

/// Recorded together, with one sync: as many as are soon on the disk, and few enough that somebody
/// who stops it does not wait.
constexpr std::size_t groupSize = 500;

ToRecord actOf(const OldLoad& load, IdSource& ids)
{
    ToRecord act{.act = load.said, .subjects = {ids.next("ld")}, .happenedAt = load.start};
    if (!load.sterilizer.empty()) {
        act.subjects.push_back(load.sterilizer);
    }
    return act;
}

/// Whether an entry says the same as a line.
bool saysTheSame(const Entry& entry, const OldLoad& load)
{
    return entry.happenedAt.at == load.start.at && entry.subject("sz") == load.sterilizer
           && encodeBody({entry.act, {}}) == encodeBody({load.said, {}});
}

/// Looks at one line after the other.
class Sorter {
public:
    Sorter(Office& office, ReadSnapshot& snapshot, const Author& author)
        : m_office(office), m_snapshot(snapshot), m_author(author)
    {
    }

    void look(const OldLoad& load, SortedHistory& into)
    {
        const std::size_t before = into.problems.size();
        const auto problem = [&](std::string field, Refusal why) {
            into.problems.push_back(
                {.line = load.line, .field = std::move(field), .why = std::move(why)});
        };
        CountingIdSource any;
        const ToRecord act = actOf(load, any);
        if (auto why = m_office.whyNoEntries(std::span(&act, 1), m_author)) {
            problem("", *std::move(why));
        }
        if (load.start.at > m_office.now()) {
            problem("start", {.why = RefusalWhy::inFuture});
        }
        if (load.said.end && load.said.end->at > m_office.now()) {
            problem("end", {.why = RefusalWhy::inFuture});
        }
        if (load.said.end && load.said.end->at < load.start.at) {
            problem("end", {.why = RefusalWhy::beforeStart, .subject = load.said.lot});
        }
        if (!load.sterilizer.empty() && !isKnown(load.sterilizer)) {
            problem("sterilizer", {.why = RefusalWhy::unknown, .subject = load.sterilizer});
        }
        const std::string lot = capitalLot(load.said.lot);
        const auto [first, isFirst] = m_lines.emplace(std::pair(load.said.source, lot), load.line);
        if (!isFirst) {
            problem("lot",
                    {.why = RefusalWhy::rowTwice, .subject = load.said.lot, .seq = first->second});
        }
        bool already = false;
        if (auto why = whyNotNew(load, lot, already)) {
            problem("lot", *std::move(why));
        }
        if (into.problems.size() != before) {
            return;
        }
        if (already) {
            ++into.already;
        } else {
            into.good.push_back(load);
        }
    }

private:
    bool isKnown(const std::string& sterilizer)
    {
        const auto [place, isNew] = m_sterilizers.emplace(sterilizer, false);
        if (isNew) {
            place->second = isMentioned(m_snapshot, sterilizer);
        }
        return place->second;
    }

    std::optional<Refusal> whyNotNew(const OldLoad& load, const std::string& lot, bool& already)
    {
        constexpr std::int64_t most = 1'000;
        Finder finder(m_snapshot);
        for (const FoundLot& found : finder.lotsFrom(lot, most)) {
            if (found.lot != lot) {
                break;
            }
            const std::vector<Entry> entries = entriesAbout(m_snapshot, found.cycle);
            const ImportedLoad old = importedLoad(FactBook(entries), found.cycle);
            if (!old.isImported) {
                return Refusal{.why = RefusalWhy::lotOfOwnLoad, .subject = load.said.lot};
            }
            // What was struck may be imported again.
            if (old.entry == nullptr
                || std::get<HistoryImported>(old.entry->act).source != load.said.source) {
                continue;
            }
            if (!saysTheSame(*old.entry, load)) {
                return Refusal{.why = RefusalWhy::importedOtherwise,
                               .subject = load.said.lot,
                               .seq = old.entry->seq};
            }
            already = true;
        }
        return std::nullopt;
    }

    Office& m_office;
    ReadSnapshot& m_snapshot;
    const Author& m_author;
    std::map<std::pair<std::string, std::string>, std::int64_t> m_lines; ///< by source and lot
    std::map<std::string, bool> m_sterilizers;
};

} // namespace

OrRefusal<SortedHistory> sortHistory(Office& office, const SignedIn& who,
                                     std::span<const OldLoad> lines, Progress& progress)
{
    ReadSnapshot snapshot(office.connection());
    // Whether somebody may import is said before anybody looks for what is wrong with the lines;
    // it is signed when it is done.
    const auto person = personById(peopleOf(snapshot), who.id());
    if (!person || !person->active || !mayDo(person->role, Task::HistoryImported)) {
        auto refused = authorFor(snapshot, who, Task::HistoryImported, nullptr, office.now());
        return std::get<Refusal>(std::move(refused));
    }
    const Author author{person->id, person->role};
    SortedHistory sorted;
    Sorter sorter(office, snapshot, author);
    std::int64_t done = 0;
    for (const OldLoad& load : lines) {
        sorter.look(load, sorted);
        if (!progress.goOn(++done, static_cast<std::int64_t>(lines.size()))) {
            sorted.cancelled = true;
            break;
        }
    }
    return sorted;
}

OrRefusal<ImportedHistory> importHistory(Office& office, const SignedIn& who, Signature signature,
                                         std::span<const OldLoad> good, Progress& progress)
{
    const Instant signedAt = office.now();
    ImportedHistory done;
    for (std::size_t from = 0; from < good.size(); from += groupSize) {
        const auto group = good.subspan(from, std::min(groupSize, good.size() - from));
        auto recorded = office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
            auto asked = authorFor(snapshot, who, Task::HistoryImported, &signature, signedAt);
            if (auto* const refusal = std::get_if<Refusal>(&asked)) {
                return std::move(*refusal);
            }
            auto& author = std::get<Author>(asked);
            SortedHistory sorted;
            Sorter sorter(office, snapshot, author);
            Plan plan{.author = author, .acts = {}, .inside = {}};
            for (const OldLoad& load : group) {
                sorter.look(load, sorted);
            }
            if (!sorted.problems.empty()) {
                return std::move(sorted.problems.front().why);
            }
            if (sorted.already != 0) {
                return Refusal{.why = RefusalWhy::alreadyThere, .subject = group.front().said.lot};
            }
            for (const OldLoad& load : sorted.good) {
                plan.acts.push_back(actOf(load, office.place().ids));
            }
            return plan;
        });
        if (auto* const refusal = std::get_if<Refusal>(&recorded)) {
            return std::move(*refusal);
        }
        const auto& appended = std::get<Appended>(recorded);
        done.firstSeq = done.firstSeq == 0 ? appended.firstSeq : done.firstSeq;
        done.head = appended.head;
        done.imported += static_cast<std::int64_t>(group.size());
        if (!progress.goOn(done.imported, static_cast<std::int64_t>(good.size()))
            && from + groupSize < good.size()) {
            done.cancelled = true;
            break;
        }
    }
    return done;
}

} // namespace loadwarden
