#pragma once

#include "tests/core/store/test_journal.h"

#include <cstdint>
#include <functional>
#include <sys/types.h>
#include <vector>

/// Processes that write a journal, to be killed.
namespace loadwarden::testing {

/// What a process said that it was told is recorded.
struct Acknowledged {
    std::int64_t seq = 0;
    std::int64_t tag = 0; ///< what the process says beside
    Hash hash;
};

/// Where a process says what is recorded for it, at once.
class Acknowledger {
public:
    explicit Acknowledger(int pipe) : m_pipe(pipe) {}

    void say(const Head& head, std::int64_t tag = 0) const;

private:
    int m_pipe;
};

/// A child process that does some work and ends. Begun by fork(): nobody may have a connection
/// open.
class Child {
public:
    using Work = std::function<void(const Acknowledger&)>;

    explicit Child(const Work& work);
    ~Child();
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;

    /// Returns when it has said something, or has ended.
    void waitForTheFirst() const;

    void kill() const;

    /// Waits for its end; what it has said, in order.
    [[nodiscard]] std::vector<Acknowledged> end();

    /// 0 when the work was done; known after end().
    [[nodiscard]] int status() const { return m_status; }

private:
    pid_t m_process = -1;
    int m_pipe = -1;
    int m_status = -1;
};

/// Appends batches of three entries to the journal at that place until it is killed. Their sizes
/// differ, so that some need many pages.
void appendForEver(const StorePlace& place, Syncing syncing, std::uint64_t seed,
                   const Acknowledger& acknowledger);

inline constexpr std::int64_t batch = 3;

/// Finds fault with a journal whose writer ended somehow: what was acknowledged is there, no batch
/// is half, all verifies behind `trusted`. Gives the head.
Head expectWhole(const StorePlace& place, const Head& trusted,
                 const std::vector<Acknowledged>& acknowledged);

} // namespace loadwarden::testing
