#include "tests/core/exchange/evidence_support.h"

#include <filesystem>
#include <map>
#include <set>

// The files of tests/data/bad_input: one defect each, and EXPECTED.tsv says where.

namespace loadwarden::tests {

namespace {

const std::string folder = "tests/data/bad_input";

struct Expected {
    std::int64_t record = 0;
    TextPlace place;
    std::string pointer;
};

std::map<std::string, Expected> expectedErrors()
{
    std::map<std::string, Expected> table;
    std::istringstream lines(fileText(folder + "/EXPECTED.tsv"));
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with('#')) {
            continue;
        }
        std::istringstream fields(line);
        std::string name;
        std::getline(fields, name, '\t');
        Expected& expected = table[name];
        fields >> expected.record >> expected.place.line >> expected.place.column;
        EXPECT_TRUE(fields) << line;
        fields.ignore();
        std::getline(fields, expected.pointer);
    }
    return table;
}

TEST(EvidenceBadInput, EveryFileHasItsErrorWhereTheTableSays)
{
    const std::map<std::string, Expected> table = expectedErrors();
    EXPECT_GT(table.size(), 60U);
    for (const auto& [name, expected] : table) {
        const auto path = std::filesystem::path(LOADWARDEN_SOURCE_DIR) / folder / name;
        std::ifstream in(path, std::ios::binary);
        ASSERT_TRUE(in) << path;
        EvidenceReader reader(in, name, nullptr);
        std::vector<ReadError> errors;
        while (auto next = reader.next()) {
            if (const auto* error = std::get_if<ReadError>(&*next)) {
                errors.push_back(*error);
            }
        }
        ASSERT_EQ(errors.size(), 1U) << name;
        EXPECT_EQ(errors[0].source, name);
        EXPECT_EQ(errors[0].record, expected.record) << name;
        ASSERT_EQ(errors[0].problems.size(), 1U) << name << '\n' << described(errors[0]);
        const ReadProblem& problem = errors[0].problems[0];
        EXPECT_EQ(problem.pointer, expected.pointer) << name << ": " << problem.message;
        EXPECT_EQ(problem.place, expected.place) << name << '\n' << described(errors[0]);
        EXPECT_GT(problem.message.size(), 8U) << name;
    }
}

TEST(EvidenceBadInput, EveryFileStandsInTheTable)
{
    const std::map<std::string, Expected> table = expectedErrors();
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(LOADWARDEN_SOURCE_DIR) + '/' + folder)) {
        const std::string name = entry.path().filename().string();
        const std::string extension = entry.path().extension().string();
        if (extension == ".json" || extension == ".jsonl") {
            EXPECT_TRUE(table.contains(name)) << name;
        }
    }
}

} // namespace

} // namespace loadwarden::tests
