#pragma once

#include "core/exchange/evidence_reader.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>
#include <string>
#include <variant>

namespace loadwarden::tests {

inline std::string fileText(const std::string& pathBelowSource)
{
    const std::string path = std::string(LOADWARDEN_SOURCE_DIR) + '/' + pathBelowSource;
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    EXPECT_TRUE(in && !text.str().empty()) << path;
    return text.str();
}

inline std::variant<EvidenceRecord, ReadError> readText(const std::string& text)
{
    return readEvidence(text, "file", 1, nullptr);
}

inline std::string described(const ReadError& error)
{
    std::ostringstream text;
    for (const ReadProblem& problem : error.problems) {
        text << problem.place.line << ':' << problem.place.column << ' ' << problem.pointer << ": "
             << problem.message << '\n';
    }
    return text.str();
}

/// A record of which nothing matters but one part.
inline EvidenceRecord mustRead(const std::string& text)
{
    auto result = readText(text);
    if (const auto* error = std::get_if<ReadError>(&result)) {
        ADD_FAILURE() << described(*error) << "in " << text;
        return {};
    }
    return std::get<EvidenceRecord>(std::move(result));
}

inline ReadError mustRefuseAll(const std::string& text)
{
    auto result = readText(text);
    if (std::holds_alternative<EvidenceRecord>(result)) {
        ADD_FAILURE() << "accepted: " << text;
        return {};
    }
    return std::get<ReadError>(std::move(result));
}

/// The only problem of a text.
inline ReadProblem mustRefuse(const std::string& text)
{
    const ReadError error = mustRefuseAll(text);
    if (error.problems.size() != 1 || error.more) {
        ADD_FAILURE() << error.problems.size() << " problems:\n"
                      << described(error) << "in " << text;
    }
    return error.problems.empty() ? ReadProblem{} : error.problems.front();
}

/// A record with a load of the given fields ("\"lot\": \"L1\"").
inline std::string withLoad(const std::string& fields)
{
    return R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"load":{)" + fields + "}}";
}

/// A record with an empty load and further fields at the top.
inline std::string withTop(const std::string& fields)
{
    return R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"load":{},)" + fields + "}";
}

/// A record of a load whose sterilizer has further fields.
inline std::string withSterilizer(const std::string& fields)
{
    return withTop(R"("sterilizer":{"id":"S1",)" + fields + "}");
}

/// A record with one cycle in its history.
inline std::string withCycle(const std::string& fields)
{
    return withSterilizer(R"("cycles":[{"kind":"load","lot":"H1","start":"2031-03-04T06:00Z",)"
                          + fields + "}]");
}

inline std::string withItem(const std::string& fields)
{
    return withLoad(R"("items":[{"label":"I1",)" + fields + "}]");
}

/// A moment of the day that the tests are set in.
inline Instant at(const std::string& hourAndMinute)
{
    const auto instant = parseInstant("2031-03-04T" + hourAndMinute + "Z");
    EXPECT_TRUE(instant) << hourAndMinute;
    return instant.value_or(Instant{});
}

/// An act as the tests write it: by, role and two moments that all differ from what is left out.
inline std::string act(const std::string& by, const std::string& happened)
{
    return R"("by":")" + by + R"(","role":"lead","happenedAt":"2031-03-04T)" + happened
           + R"(Z","recordedAt":"2031-03-04T23:00Z")";
}

inline void expectAct(const Act& act, const std::string& by, const std::string& happened)
{
    EXPECT_EQ(act.by, by);
    EXPECT_EQ(act.role, Role::lead);
    EXPECT_EQ(act.happenedAt, at(happened));
    EXPECT_EQ(act.recordedAt, at("23:00"));
}

} // namespace loadwarden::tests
