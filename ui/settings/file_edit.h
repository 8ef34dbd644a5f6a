#pragma once

#include <QWidget>

class QLayout;
class QLineEdit;

namespace loadwarden::ui {

/// A path that is typed or chosen.
class FileEdit : public QWidget {
    Q_OBJECT

public:
    enum class What : std::uint8_t { openFile, saveFile, folder };

    /// `asks` is the title of the choice and the button's accessible name.
    FileEdit(What what, const QString& asks, QWidget* parent = nullptr);

    [[nodiscard]] QLineEdit* line() const { return m_line; }
    [[nodiscard]] QString path() const;

private:
    void choose();

    What m_what;
    QString m_asks;
    QLineEdit* m_line;
};

} // namespace loadwarden::ui
