#pragma once

#include "ui/look/look.h"

#include <QLabel>
#include <QPushButton>
#include <QString>

#include <string>

namespace loadwarden::ui {

[[nodiscard]] inline QString text(const std::string& utf8)
{
    return QString::fromStdString(utf8);
}

/// A text in which words longer than a column is wide, such as the name of a file, may be broken,
/// at a place where that is read easily where there is one. Labels that wrap have it by themselves.
[[nodiscard]] QString withBreaks(const QString& says);

/// A label that wraps where it stands for itself (`wraps`), else keeps to one line.
[[nodiscard]] QLabel* makeLabel(const QString& says, Type type = Type::body, bool wraps = true);

/// The same in the colour of text beside other text.
[[nodiscard]] QLabel* makeMuted(const QString& says, bool wraps = true);

/// How a button looks: the style sheet knows them by the property "kind".
enum class ButtonKind : std::uint8_t { plain, main, quiet, key, choice };

[[nodiscard]] QPushButton* makeButton(const QString& says, ButtonKind kind = ButtonKind::plain);

/// Sets a property that the style sheet asks for, and has it asked again.
void setStyleProperty(QWidget* widget, const char* name, const QVariant& value);

/// A line between things.
[[nodiscard]] QFrame* makeRule();

} // namespace loadwarden::ui
