#pragma once

#include "ui/load/cycle_desk.h"

#include <QFrame>

class QComboBox;

namespace loadwarden::ui {

class Field;
class TimeEdit;

/// What was done before it is recorded, by oneself or by somebody who signed for it on paper: as
/// long as the strip is open, what is recorded on the page is of that time and of that person.
class LaterStrip : public QFrame {
    Q_OBJECT

public:
    explicit LaterStrip(CycleDesk& desk, QWidget* parent = nullptr);

    /// Opens it, or closes it again.
    void toggle();

private:
    void close();
    void fillPeople();
    void tell();

    CycleDesk& m_desk;
    TimeEdit* m_when;
    Field* m_whenField;
    QComboBox* m_by;
    std::vector<Person> m_people;
    std::string m_opener; ///< st-, who said that it was earlier
};

} // namespace loadwarden::ui
