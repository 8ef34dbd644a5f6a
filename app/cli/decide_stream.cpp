#include "app/cli/decide_stream.h"

#include "app/cli/plain_text.h"
#include "core/exchange/decision_writer.h"
#include "core/exchange/evidence_reader.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"
#include "core/words/say.h"

#include <istream>
#include <ostream>
#include <stdexcept>
#include <utility>
#include <variant>

namespace loadwarden::cli {

namespace {

/// Output is handed on when this much has gathered.
constexpr std::size_t batchBytes = 65'536;

std::string placeOf(const ReadError& error)
{
    return error.source + ": record " + std::to_string(error.record) + ": "
           + (error.pointer.empty() ? "" : error.pointer + ": ");
}

class Run {
public:
    Run(const DecideSettings& settings, const Clock& clock, Streams streams, DecideTally& tally)
        : m_settings(settings), m_clock(clock), m_streams(streams), m_tally(tally)
    {
    }

    void take(EvidenceRecord record)
    {
        const Instant now = m_settings.at     ? *m_settings.at
                            : record.decideAt ? *record.decideAt
                                              : m_clock.now();
        const Evidence evidence = assemble(std::move(record));
        const Occasion occasion{evidence.record.zone, now};
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
        ++m_tally.bad;
        flush(); // so that errors stand between the decisions where they belong
        m_streams.err << placeOf(error) << error.message << '\n';
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
    void write(const Decision& decision, const Occasion& occasion)
    {
        ++m_tally.decided;
        m_tally.withheld += allMayGo(decision) ? 0 : 1;
        if (m_settings.json) {
            appendDecision(m_out, decision, sayIn(occasion));
        } else {
            appendPlain(m_out, decision, occasion);
        }
    }

    void write(const TestJudgement& judgement, const Occasion& occasion)
    {
        ++m_tally.decided;
        m_tally.withheld += judgement.result == TestResult::passed ? 0 : 1;
        if (m_settings.json) {
            appendJudgement(m_out, judgement, sayIn(occasion));
        } else {
            appendPlain(m_out, judgement, occasion);
        }
    }

    static FindingSay sayIn(const Occasion& occasion)
    {
        return [style = HouseStyle{.zone = occasion.zone}](const Finding& finding) {
            Said said = say(finding, style);
            return FindingText{std::move(said.says), std::move(said.next), std::move(said.source)};
        };
    }

    const DecideSettings& m_settings;
    const Clock& m_clock;
    Streams m_streams;
    DecideTally& m_tally;
    std::string m_out;
};

} // namespace

void decideStream(std::istream& evidence, const std::string& name, const DecideSettings& settings,
                  const Clock& clock, Streams streams, DecideTally& tally)
{
    Run run(settings, clock, streams, tally);
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
