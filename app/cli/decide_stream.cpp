#include "app/cli/decide_stream.h"

#include "app/cli/paragraph.h"
#include "app/cli/plain_text.h"
#include "core/exchange/decision_writer.h"
#include "core/exchange/evidence_reader.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"
#include "core/words/say.h"

#include <algorithm>
#include <filesystem>
#include <istream>
#include <numeric>
#include <ostream>
#include <stdexcept>
#include <utility>
#include <variant>

namespace loadwarden::cli {

namespace {

/// Output is handed on when this much has gathered.
constexpr std::size_t batchBytes = 65'536;

std::string placeOf(const std::string& source, std::int64_t record)
{
    return oneLine(source) + ": record " + std::to_string(record) + ": ";
}

class Run {
public:
    Run(const std::string& source, const DecideSettings& settings, const Clock& clock,
        Streams streams, DecideTally& tally)
        : m_source(source), m_settings(settings), m_clock(clock), m_streams(streams), m_tally(tally)
    {
    }

    void take(EvidenceRecord record)
    {
        ++m_record;
        const Instant clock = m_clock.now();
        const Instant now = m_settings.at     ? *m_settings.at
                            : record.decideAt ? *record.decideAt
                                              : clock;
        const Occasion occasion{nameForPeople(), record.zone, now};
        if (now > clock && !m_settings.planned) {
            warnOfFuture(occasion, clock);
        }
        const Evidence evidence = assemble(std::move(record));
        if (evidence.record.test) {
            write(judgeTest(evidence, m_settings.policy, now), occasion);
        } else {
            write(loadwarden::decide(evidence, m_settings.policy, now), occasion);
        }
        if (m_out.size() >= batchBytes) {
            flush();
        }
    }

    void take(const ReadError& error)
    {
        m_record = error.record;
        ++m_tally.badRecords;
        flush(); // so that errors stand between the decisions where they belong
        const std::string place = placeOf(m_source, m_record);
        for (const ReadProblem& problem : error.problems) {
            m_streams.err << place << "line " << problem.place.line << ", column "
                          << problem.place.column << ": "
                          << (problem.pointer.empty() ? "" : problem.pointer + ": ")
                          << problem.message << '\n';
        }
        if (error.more) {
            m_streams.err << place << "there is more that is wrong; correct this first\n";
        }
    }

    void flush()
    {
        m_streams.out.write(m_out.data(), static_cast<std::streamsize>(m_out.size()));
        m_streams.out.flush();
        if (!m_streams.out) {
            throw std::runtime_error("the output could not be written");
        }
        m_out.clear();
    }

private:
    void warnOfFuture(const Occasion& occasion, Instant clock)
    {
        const HouseStyle style{.zone = occasion.zone};
        flush();
        m_streams.err << placeOf(m_source, m_record)
                      << "decided for a moment that has not come: " << sayTime(occasion.now, style)
                      << "; this computer's clock says " << sayTime(clock, style)
                      << " (--planned: it is meant so)\n";
    }

    /// The file without its folder; the first record, often the only one, needs no number.
    std::string nameForPeople() const
    {
        const std::string file = std::filesystem::path(m_source).filename().string();
        return m_record == 1 ? file : file + ", record " + std::to_string(m_record);
    }

    void write(const Decision& decision, const Occasion& occasion)
    {
        ++m_tally.loads[static_cast<std::size_t>(decision.verdict)];
        m_tally.apart += std::ranges::any_of(decision.items, [&](const ItemDecision& item) {
            return item.verdict != decision.verdict;
        });
        m_tally.withheld += allMayGo(decision) ? 0 : 1;
        if (m_settings.json) {
            appendDecision(m_out, decision, {occasion.now, m_settings.policy}, sayIn(occasion));
        } else {
            appendPlain(m_out, decision, occasion, m_tally.explained);
        }
    }

    void write(const TestJudgement& judgement, const Occasion& occasion)
    {
        ++m_tally.tests[static_cast<std::size_t>(judgement.result)];
        m_tally.withheld += judgement.result == TestResult::passed ? 0 : 1;
        if (m_settings.json) {
            appendJudgement(m_out, judgement, {occasion.now, m_settings.policy}, sayIn(occasion));
        } else {
            appendPlain(m_out, judgement, occasion, m_tally.explained);
        }
    }

    static FindingSay sayIn(const Occasion& occasion)
    {
        return [style = HouseStyle{.zone = occasion.zone}](const Finding& finding) {
            Said said = say(finding, style);
            return FindingText{std::move(said.says), std::move(said.next), std::move(said.source)};
        };
    }

    const std::string& m_source;
    const DecideSettings& m_settings;
    const Clock& m_clock;
    Streams m_streams;
    DecideTally& m_tally;
    std::int64_t m_record = 0; ///< counted from 1
    std::string m_out;
};

} // namespace

std::int64_t DecideTally::decided() const
{
    return std::reduce(loads.begin(), loads.end()) + std::reduce(tests.begin(), tests.end());
}

void decideStream(std::istream& evidence, const std::string& name, const DecideSettings& settings,
                  const Clock& clock, Streams streams, DecideTally& tally)
{
    Run run(name, settings, clock, streams, tally);
    EvidenceReader reader(evidence, name, &settings.specifications);
    while (auto next = reader.next()) {
        std::visit([&](auto& value) { run.take(std::move(value)); }, *next);
        if (evidence.rdbuf()->in_avail() <= 0) {
            run.flush(); // whoever sends one record at a time waits for its answer
        }
    }
    run.flush();
    if (evidence.bad()) {
        throw std::runtime_error(name + ": could not be read to its end");
    }
}

} // namespace loadwarden::cli
