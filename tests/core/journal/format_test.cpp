// The journal's bytes as somebody else reads them: verify_journal.py, written from FORMAT.md, with
// Python's own BLAKE2b and PyNaCl's Ed25519.
#include "core/journal/seal.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>
#include <fstream>

namespace loadwarden {
namespace {

struct Verdict {
    int status = -1;
    std::string said;
};

class Format : public testing::Test {
protected:
    void SetUp() override
    {
        m_folder = std::filesystem::path(testing::TempDir())
                   / ("journal-format-" + SealKey::create().seedHex().substr(0, 16));
        std::filesystem::create_directories(m_folder);
        add("journal.opened", R"({"facility":"F","journal":"jn-1","timeZone":"UTC"})");
        for (int i = 0; i < 20; ++i) {
            add("note", R"({"text":"grün \"\\ )" + std::to_string(i) + R"("})");
        }
    }
    void TearDown() override { std::filesystem::remove_all(m_folder); }

    void add(std::string kind, std::string body)
    {
        Envelope entry;
        entry.seq = m_head.seq + 1;
        entry.prev = m_head.hash;
        entry.kind = std::move(kind);
        entry.body = std::move(body);
        m_lines.push_back(writeEnvelope(entry));
        m_head = {entry.seq, hashOf(m_lines.back())};
    }

    Seal sealNow() const { return makeSeal("jn-1", m_head, {Instant{5}, 0}, m_key); }

    Verdict verify(const std::vector<Seal>& seals = {}) const
    {
        std::ofstream journal(m_folder / "journal.jsonl", std::ios::binary);
        for (const std::string& line : m_lines) {
            journal << line << '\n';
        }
        journal.close();
        std::ofstream sealFile(m_folder / "seals.jsonl", std::ios::binary);
        for (const Seal& seal : seals) {
            sealFile << writeSeal(seal) << '\n';
        }
        sealFile.close();
        const std::string command = std::string(LOADWARDEN_PYTHON)
                                    + " " LOADWARDEN_SOURCE_DIR
                                      "/tests/core/journal/verify_journal.py "
                                    + (m_folder / "journal.jsonl").string() + " "
                                    + (m_folder / "seals.jsonl").string() + " 2>&1";
        Verdict verdict;
        FILE* pipe = popen(command.c_str(), "r");
        char buffer[4096];
        while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) {
            verdict.said += buffer;
        }
        verdict.status = pclose(pipe);
        return verdict;
    }

    std::vector<std::string> m_lines;
    Head m_head;
    SealKey m_key = SealKey::create();

private:
    std::filesystem::path m_folder;
};

TEST_F(Format, IsCheckedByAnIndependentReader)
{
    const Verdict verdict = verify({sealNow()});
    EXPECT_EQ(verdict.status, 0) << verdict.said;
    EXPECT_EQ(verdict.said, "21 entries, head " + hexOf(m_head.hash) + "\n");
}

TEST_F(Format, ShowsAnEdit)
{
    m_lines[9].replace(m_lines[9].find("gr"), 2, "Gr");
    EXPECT_EQ(verify().said, "entry 11 does not follow the one before it\n");
}

TEST_F(Format, ShowsACutAndARewriteOnlyByASeal)
{
    const Seal seal = sealNow();
    m_lines.pop_back();
    EXPECT_EQ(verify().status, 0);
    EXPECT_EQ(verify({seal}).said,
              "the seal of entry 21 is of an entry that is not there: the journal was cut off\n");
    m_head = {20, hashOf(m_lines.back())};
    add("note", R"({"text":"another"})");
    EXPECT_EQ(verify().status, 0);
    EXPECT_EQ(verify({seal}).said,
              "the seal of entry 21 does not fit: the journal was rewritten\n");
}

TEST_F(Format, ShowsASealOfSomebodyElse)
{
    Seal seal = sealNow();
    seal.signature[0] ^= 1U;
    EXPECT_EQ(verify({seal}).said, "the seal of entry 21 is not genuine\n");
    EXPECT_EQ(verify({makeSeal("jn-2", m_head, {}, m_key)}).said,
              "the seal of entry 21 is of another journal\n");
}

} // namespace
} // namespace loadwarden
