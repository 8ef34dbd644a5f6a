#pragma once

#include "ui/records/second_desk.h"
#include "ui/records/verify_text.h"
#include "ui/shell/area.h"

#include <QFrame>

class QLabel;
class QProgressBar;
class QPushButton;

namespace loadwarden::ui {

class FileAsk;

/// What is done with the whole journal: it is verified, or copied out. A strip of the page that is
/// seen only while there is anything to say; nothing else waits for it.
class JournalWork : public QFrame {
    Q_OBJECT

public:
    explicit JournalWork(Workstation& workstation, QWidget* parent = nullptr);

    void verify();
    /// Asks for a file first.
    void exportLines();

    [[nodiscard]] bool isBusy() const { return m_second.isBusy(); }

signals:
    /// Whether anything runs now.
    void busy(bool isBusy);

private:
    void begin(const QString& what);
    void exportTo(const QString& file, bool replaces);
    void told(const char* tone, const QString& answer, const QStringList& lines);
    void failed(const Trouble& trouble);
    void showOnly(bool asks, bool runs, bool tells);

    Workstation& m_workstation;
    SecondDesk m_second;
    FileAsk* m_ask;
    QWidget* m_running;
    QLabel* m_what;
    QProgressBar* m_bar;
    QPushButton* m_cancel;
    QWidget* m_told;
    QLabel* m_answer;
    QLabel* m_lines;
    QPushButton* m_away;
};

} // namespace loadwarden::ui
