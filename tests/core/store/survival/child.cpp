#include "tests/core/store/survival/child.h"

#include "core/store/verify.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <csignal>
#include <cstring>
#include <iostream>
#include <poll.h>
#include <random>
#include <stdexcept>
#include <sys/wait.h>
#include <unistd.h>

namespace loadwarden::testing {
namespace {

/// As it goes through the pipe, which takes so few bytes whole or not at all.
struct Message {
    std::int64_t seq;
    std::int64_t tag;
    std::array<std::uint8_t, 32> hash;
};

} // namespace

void Acknowledger::say(const Head& head, std::int64_t tag) const
{
    const Message message{head.seq, tag, head.hash.bytes};
    if (write(m_pipe, &message, sizeof message) != static_cast<ssize_t>(sizeof message)) {
        _exit(2);
    }
}

Child::Child(const Work& work)
{
    std::array<int, 2> ends{};
    if (pipe(ends.data()) != 0) {
        throw std::runtime_error("no pipe");
    }
    m_process = fork();
    if (m_process < 0) {
        throw std::runtime_error("no process");
    }
    if (m_process == 0) {
        close(ends[0]);
        int status = 0;
        try {
            work(Acknowledger(ends[1]));
        } catch (const std::exception& error) {
            std::cerr << "child: " << error.what() << '\n';
            status = 1;
        }
        // Without the destructors of what belongs to the parent.
        _exit(status);
    }
    close(ends[1]);
    m_pipe = ends[0];
}

Child::~Child()
{
    if (m_process > 0) {
        kill();
        (void)end();
    }
}

void Child::waitForTheFirst() const
{
    pollfd wanted{m_pipe, POLLIN, 0};
    poll(&wanted, 1, -1);
}

void Child::kill() const
{
    ::kill(m_process, SIGKILL);
}

std::vector<Acknowledged> Child::end()
{
    std::vector<Acknowledged> said;
    Message message{};
    while (read(m_pipe, &message, sizeof message) == static_cast<ssize_t>(sizeof message)) {
        said.push_back({message.seq, message.tag, Hash{message.hash}});
    }
    close(m_pipe);
    waitpid(m_process, &m_status, 0);
    m_process = -1;
    return said;
}

void appendForEver(const StorePlace& place, Syncing syncing, std::uint64_t seed,
                   const Acknowledger& acknowledger)
{
    std::mt19937_64 random(seed);
    TestJournal journal(place, {.syncing = syncing});
    for (;;) {
        std::vector<EntryDraft> drafts;
        for (std::int64_t i = 0; i < batch; ++i) {
            const std::size_t size = random() % 16 == 0 ? random() % 20'000 : random() % 200;
            drafts.push_back(
                noteAbout({"ld-1", "it-" + std::to_string(random() % 50)}, std::string(size, 'x')));
        }
        acknowledger.say(std::get<Appended>(journal.store->append(drafts)).head);
    }
}

Head expectWhole(const StorePlace& place, const Head& trusted,
                 const std::vector<Acknowledged>& acknowledged)
{
    Connection connection(place, {.access = Access::write});
    NoProgress progress;
    VerifyRequest request{.pages = false};
    if (trusted.seq != 0) {
        request.after = trusted;
    }
    for (const Acknowledged& each : acknowledged) {
        request.expected.push_back({each.seq, each.hash});
    }
    const VerifyReport report = verifyJournal(connection, request, progress);
    for (const JournalFault& fault : report.faults) {
        ADD_FAILURE() << sentenceOf(fault);
    }
    EXPECT_EQ((report.head.seq - 1) % batch, 0) << "half of a batch";
    return report.head;
}

} // namespace loadwarden::testing
