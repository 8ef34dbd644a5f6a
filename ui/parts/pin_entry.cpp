#include "ui/parts/pin_entry.h"

#include "ui/look/text.h"

#include <QGridLayout>
#include <QLineEdit>
#include <QRegularExpressionValidator>

namespace loadwarden::ui {
namespace {

constexpr int longestPin = 12;

} // namespace

QLineEdit* makePinLine()
{
    auto* const line = new QLineEdit;
    line->setEchoMode(QLineEdit::Password);
    line->setMaxLength(longestPin);
    line->setProperty("pin", "true");
    line->setInputMethodHints(Qt::ImhDigitsOnly | Qt::ImhSensitiveData | Qt::ImhNoPredictiveText);
    line->setValidator(
        new QRegularExpressionValidator(QRegularExpression(QStringLiteral("[0-9]*")), line));
    return line;
}

PinPad::PinPad(QLineEdit* line, QWidget* parent) : QWidget(parent)
{
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(space::small);
    const auto key = [&](const QString& face, const QString& name, int row, int column,
                         auto pressed) {
        auto* const button = makeButton(face, ButtonKind::key);
        button->setFocusPolicy(Qt::NoFocus);
        button->setAccessibleName(name);
        connect(button, &QPushButton::clicked, line, [line, pressed] {
            line->setFocus();
            pressed();
        });
        grid->addWidget(button, row, column);
    };
    for (int digit = 1; digit <= 9; ++digit) {
        const QString face = QString::number(digit);
        key(face, face, (digit - 1) / 3, (digit - 1) % 3, [line, face] { line->insert(face); });
    }
    key(tr("Clear"), tr("Clear the PIN"), 3, 0, [line] { line->clear(); });
    key(QStringLiteral("0"), QStringLiteral("0"), 3, 1,
        [line] { line->insert(QStringLiteral("0")); });
    key(tr("Back"), tr("Take the last digit away"), 3, 2, [line] { line->backspace(); });
}

} // namespace loadwarden::ui
