#pragma once

#include "tests/ui/department.h"
#include "tests/ui/walk/faults.h"
#include "tests/ui/walk/pseudo_translation.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <tuple>

namespace loadwarden::ui_tests {

/// Size, theme, whether in the pseudo-translation, size of the text.
using LookOfAll = std::tuple<QSize, ui::Theme, bool, ui::TextSize>;

/// Both sizes, in both themes, as it is and in the pseudo-translation.
[[nodiscard]] inline auto everyLook()
{
    return ::testing::Combine(::testing::Values(QSize(1366, 768), QSize(1920, 1080)),
                              ::testing::Values(ui::Theme::light, ui::Theme::dark),
                              ::testing::Bool(), ::testing::Values(ui::TextSize::normal));
}

[[nodiscard]] inline auto largerText()
{
    return ::testing::Values(
        LookOfAll(QSize(1366, 768), ui::Theme::light, false, ui::TextSize::large),
        LookOfAll(QSize(1920, 1080), ui::Theme::light, false, ui::TextSize::largest));
}

/// Looks at what is seen with every check (faults.h), and counts what it has looked at.
class Walk : public ::testing::TestWithParam<LookOfAll> {
protected:
    void SetUp() override;
    void TearDown() override;

    static QSize size() { return std::get<0>(GetParam()); }
    static ui::Theme theme() { return std::get<1>(GetParam()); }
    static bool isPseudo() { return std::get<2>(GetParam()); }

    /// The window as it is now.
    void look(const std::string& page);
    /// A dialog before the window, which is no larger than that.
    void lookAtDialog(const std::string& page);
    static int areaOf(std::string_view id);

    Desktop desktop;

private:
    void lookAt(QWidget& window, const std::string& page);

    PseudoTranslation translation;
};

} // namespace loadwarden::ui_tests
