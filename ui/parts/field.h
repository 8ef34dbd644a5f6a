#pragma once

#include <QWidget>

class QLabel;

namespace loadwarden::ui {

/// A field with its label above and, below, a line that says what is wrong with what was typed. The
/// line takes its place from the beginning, so that nothing jumps.
class Field : public QWidget {
    Q_OBJECT

public:
    /// `label` may have a mnemonic. `hint` stands where no error does.
    Field(const QString& label, QWidget* editor, const QString& hint = {},
          QWidget* parent = nullptr);

    [[nodiscard]] QWidget* editor() const { return m_editor; }

    /// Another label for an editor that is a combo box or a line.
    void setName(const QString& label);
    /// Another hint.
    void setHint(const QString& hint);
    /// An empty text: nothing is wrong.
    void setError(const QString& says);
    [[nodiscard]] bool hasError() const { return m_hasError; }

private:
    QWidget* m_editor;
    QLabel* m_name;
    QLabel* m_line;
    QString m_hint;
    bool m_hasError = false;
};

} // namespace loadwarden::ui
