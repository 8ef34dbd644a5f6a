#include "core/journal/header.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Envelope sample()
{
    Envelope envelope;
    envelope.seq = 7;
    envelope.prev = hashOf("before");
    envelope.recordedAt = {Instant{1'930'000'000'000}, -360};
    envelope.happenedAt = {Instant{-5}, 345};
    envelope.actor = R"(a "b\)";
    envelope.role = "\\\"";
    envelope.workstation = "w\n";
    envelope.kind = "ci.read";
    envelope.subjects = {"ci-1", "ld-1"};
    envelope.reason = "r";
    return envelope;
}

TEST(Header, SaysWhatTheEnvelopeSays)
{
    const Envelope envelope = sample();
    const std::string bytes = writeEnvelope(envelope);
    EntryHeader header;
    ASSERT_TRUE(readHeader(bytes, header));
    EXPECT_EQ(header.seq, 7);
    EXPECT_EQ(header.prev, envelope.prev);
    EXPECT_EQ(header.recordedAt, envelope.recordedAt);
    EXPECT_EQ(header.kind, "ci.read");
    EXPECT_THAT(header.subjects, ElementsAre("ci-1", "ld-1"));
}

TEST(Header, ForgetsTheSubjectsOfTheEntryBefore)
{
    Envelope envelope = sample();
    EntryHeader header;
    ASSERT_TRUE(readHeader(writeEnvelope(envelope), header));
    envelope.subjects.clear();
    const std::string bytes = writeEnvelope(envelope);
    ASSERT_TRUE(readHeader(bytes, header));
    EXPECT_THAT(header.subjects, IsEmpty());
}

TEST(Header, IsNotReadFromAnEntryCutOffAnywhereBeforeTheReason)
{
    const std::string bytes = writeEnvelope(sample());
    const std::size_t behind = bytes.find(R"("reason":)") + std::string_view(R"("reason":)").size();
    EntryHeader header;
    for (std::size_t size = 0; size < behind; ++size) {
        EXPECT_FALSE(readHeader(std::string_view(bytes).substr(0, size), header)) << size;
    }
    EXPECT_TRUE(readHeader(std::string_view(bytes).substr(0, behind), header));
}

TEST(Header, TakesOnlyPlainWordsForKindAndSubjects)
{
    for (const char* word : {"", "a\"b", "a\\b", "a\nb"}) {
        EXPECT_FALSE(isPlainWord(word));
        Envelope envelope = sample();
        EntryHeader header;
        envelope.kind = word;
        EXPECT_FALSE(readHeader(writeEnvelope(envelope), header)) << word;
        envelope = sample();
        envelope.subjects = {"a", word};
        EXPECT_FALSE(readHeader(writeEnvelope(envelope), header)) << word;
    }
    EXPECT_TRUE(isPlainWord("ld-1 ü"));
}

} // namespace
} // namespace loadwarden
