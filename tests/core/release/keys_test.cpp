// RULES.md and the list of findings name the same keys, and the keys that were ever published are
// there.

#include "core/release/finding.h"

#include <gtest/gtest.h>

#include <fstream>
#include <regex>
#include <set>
#include <sstream>

namespace loadwarden {
namespace {

std::set<std::string> keysOfThePage()
{
    std::ifstream in(LOADWARDEN_SOURCE_DIR "/core/release/RULES.md");
    std::stringstream text;
    text << in.rdbuf();
    const std::string page = text.str();
    // Fields of the evidence that are written with a dot, too.
    const std::set<std::string> fields{"aeration.minutes", "specification.settings",
                                       "physical.good", "sterilizer.cycles"};
    std::set<std::string> keys;
    const std::regex key("`([a-z-]+\\.[a-z-]+)`");
    for (std::sregex_iterator it(page.begin(), page.end(), key), end; it != end; ++it) {
        if (!fields.contains((*it)[1])) {
            keys.insert((*it)[1]);
        }
    }
    return keys;
}

TEST(Keys, AreThoseOfTheRules)
{
    std::set<std::string> keys;
    for (int i = 0; i < keyCount; ++i) {
        EXPECT_TRUE(keys.insert(std::string(textOf(static_cast<Key>(i)))).second) << "named twice";
    }
    EXPECT_EQ(keys, keysOfThePage());
}

} // namespace
} // namespace loadwarden
