#pragma once

#include <QWidget>

class QHBoxLayout;
class QLineEdit;
class QPushButton;

namespace loadwarden::ui {

class Field;

/// Asks on the page to which file something goes. What is there is replaced only when somebody has
/// said so.
class FileAsk : public QWidget {
    Q_OBJECT

public:
    /// `kinds` as a file dialog writes them.
    FileAsk(const QString& label, const QString& does, const QString& kinds,
            QWidget* parent = nullptr);

    /// Begins anew with a suggestion.
    void ask(const QString& file);
    [[nodiscard]] QString file() const;
    /// What is to be said at the file's name.
    void setError(const QString& says);
    /// What the button says.
    void setDoes(const QString& does);
    /// No file is asked for: it goes elsewhere.
    void setFileAsked(bool asked);
    [[nodiscard]] QPushButton* go() const { return m_go; }

signals:
    /// `replaces`: somebody has said that what is there may go.
    void chosen(const QString& file, bool replaces);
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void choose();
    void check(bool replaces);
    void offerReplacing(bool offers);

    QString m_kinds;
    QHBoxLayout* m_row;
    QLineEdit* m_line;
    Field* m_field;
    QPushButton* m_go;
    QPushButton* m_replace;
    bool m_isFileAsked = true;
};

} // namespace loadwarden::ui
