#pragma once

#include "ui/first_start/step.h"

#include <QWidget>

#include <vector>

class QLabel;
class QPushButton;
class QScrollArea;
class QStackedWidget;

namespace loadwarden::ui {

class Banner;

/// Makes a department's journal step by step, or opens one that is there.
class FirstStartPage : public QWidget {
    Q_OBJECT

public:
    /// `file` is where the journal would go.
    FirstStartPage(Look& look, const Workplace& place, const QString& file,
                   QWidget* parent = nullptr);

signals:
    /// A journal that is to be opened now.
    void chosen(const QString& file);

private:
    void forward();
    void back();
    void showStep(int index);
    void begin();
    void answered(const Founded& trouble);
    void openOther();
    void addStep(Step* step);

    Workplace m_place;
    QStackedWidget* m_stack;
    std::vector<Step*> m_steps;
    QLabel* m_where;
    Banner* m_banner;
    QPushButton* m_forward;
    QPushButton* m_back;
    QPushButton* m_other;
    FirstDay m_day;
};

} // namespace loadwarden::ui
