#include "ui/parts/combo.h"

namespace loadwarden::ui {
namespace {

constexpr int leastCharacters = 8;

} // namespace

QComboBox* makeCombo(const QStringList& entries)
{
    auto* const combo = new QComboBox;
    combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    combo->setMinimumContentsLength(leastCharacters);
    combo->addItems(entries);
    return combo;
}

} // namespace loadwarden::ui
