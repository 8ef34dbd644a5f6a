#pragma once

#include "core/quantities/instant.h"
#include "tests/core/acts/journal_support.h"
#include "tests/core/store/bulk_writer.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace loadwarden::benchmarks {

/// How far somebody has come with a load.
enum class Stage : std::uint8_t { beingLoaded, running, ended, incubating, unreviewed, unsignedYet, done };

/// What else is about a load.
struct Kind {
    bool hasVial = false;
    bool hasImplant = false;
    bool isMissed = false; ///< something of it does not hold
    Stage stage = Stage::done;
};

/// A day's minute, of a day counted from the one before the first load.
[[nodiscard]] Instant momentOfDay(std::int64_t day, std::int64_t minute);

/// The day behind those of so many loads.
[[nodiscard]] std::int64_t dayAfter(std::int64_t loads);

/// Writes loads as they usually are, straight into a journal's file: of a department of ten
/// sterilizers, ten loads each a day, twelve items a load.
class LoadWriter {
public:
    explicit LoadWriter(const std::filesystem::path& file);

    /// A load of those that came to their end, counted from 0, with what its day begins with.
    void load(std::int64_t number);
    /// A load of a day, there the `ofDay`th.
    void load(std::int64_t number, std::int64_t day, std::int64_t ofDay, const Kind& kind);
    /// The air-removal test of a sterilizer, counted from 0, on a day.
    void test(std::int64_t day, std::int64_t sterilizer);
    /// The control of a day's vials.
    void control(std::int64_t day);
    /// A lot that expires at the end of a day.
    void lot(std::int64_t day, const std::string& number, std::int64_t expires);
    /// Something said of a load that was signed.
    void saidLater(std::int64_t number, Instant when);

    /// Writes what is left.
    void finish();

private:
    [[nodiscard]] Instant now(std::int64_t minutes = 0) const;
    template <class Act>
    void add(const tests::Person& who, Instant when, std::vector<std::string> subjects,
             const Act& act);
    void record();
    void registers();
    void fill(std::int64_t number, const Kind& kind);
    void start(std::int64_t number);
    void end(std::int64_t number, const Kind& kind);
    void read(const Kind& kind);
    void vial(std::int64_t number, const Kind& kind);

    testing::BulkWriter m_writer;
    std::vector<EntryDraft> m_together;
    Instant m_recordedAt{};
    std::int64_t m_minute = 0;
    std::string m_sterilizer;
    std::string m_cycle;
    std::string m_number;
    std::string m_lot;
};

/// The day behind `loads` as it stands at 13:00: most is signed, and some of everything waits.
void writeLastDay(LoadWriter& writer, std::int64_t loads);

} // namespace loadwarden::benchmarks
