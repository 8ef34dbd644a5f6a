#pragma once

#include "core/acts/kinds/floor_acts.h"
#include "ui/shell/area.h"

#include <QFrame>

class QCheckBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;
class FloorPlaces;

/// Below an answer: from where the question came, so that what is asked and misread most can be
/// taught.
class LogForm : public QFrame {
    Q_OBJECT

public:
    /// `question` lacks only where it came from and whether something had been misread.
    LogForm(Workstation& workstation, QuestionLogged question, FloorPlaces& places,
            QWidget* parent = nullptr);

signals:
    void says(const QString& what, const QString& next);
    void logged();

private:
    void record();

    Workstation m_workstation;
    QuestionLogged m_question;
    FloorPlaces& m_places;
    QLineEdit* m_place;
    Field* m_placeField;
    QLineEdit* m_by;
    QCheckBox* m_wasMisread;
    bool m_isRecording = false; ///< a second press meanwhile is none
};

} // namespace loadwarden::ui
