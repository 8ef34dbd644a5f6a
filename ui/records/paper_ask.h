#pragma once

#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"
#include "ui/records/second_desk.h"
#include "ui/shell/area.h"

#include <QFrame>

#include <functional>

class QComboBox;
class QHBoxLayout;

namespace loadwarden::ui {

class FileAsk;

/// Asks on the page where a sheet goes, to a PDF file or a printer, and brings it there.
class PaperAsk : public QFrame {
    Q_OBJECT

public:
    explicit PaperAsk(Workstation& workstation, QWidget* parent = nullptr);

signals:
    void says(const QString& what, const QString& next);

protected:
    /// Makes a sheet for that house; on any thread, so it holds all that it needs.
    using Making = std::function<paper::Pages(const paper::House&)>;

    /// Puts another question before those that it asks itself.
    void addFirst(QWidget* question);
    /// Asks about one: what it is of, and a name for its file.
    void askFor(const QString& of, const QString& fileName);
    /// The facility's day.
    [[nodiscard]] Date today() const;
    /// What is put on paper, once somebody has said where it goes.
    [[nodiscard]] virtual Making making() const = 0;

private:
    void go(const QString& file);
    void save(const QString& file);
    void print(const QString& printer);
    [[nodiscard]] paper::House house() const;

    Workstation m_workstation;
    SecondDesk m_second;
    QHBoxLayout* m_row;
    QComboBox* m_where;
    QComboBox* m_size;
    FileAsk* m_ask;
    QString m_of;
};

} // namespace loadwarden::ui
