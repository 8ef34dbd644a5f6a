#pragma once

#include "core/sterilizers/sterilizer_record.h"

#include <QWidget>

#include <vector>

class QGridLayout;
class QLabel;

namespace loadwarden::ui {

/// The alarms of a sterilizer as they were classed, to be read.
class AlarmsView : public QWidget {
    Q_OBJECT

public:
    AlarmsView();

    void show(const std::vector<ListedAlarm>& alarms);

private:
    QLabel* m_none;
    QGridLayout* m_rows;
};

} // namespace loadwarden::ui
