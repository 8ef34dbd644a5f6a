#pragma once

#include "core/acts/kinds/floor_acts.h"

#include <QFrame>

class QCheckBox;

namespace loadwarden::ui {

class FloorDesk;
class FloorFrom;

/// Below an answer: from where the question came, so that what is asked and misread most can be
/// taught.
class LogForm : public QFrame {
    Q_OBJECT

public:
    /// `question` lacks only where it came from and whether something had been misread. The desk
    /// outlives the form.
    LogForm(FloorDesk& desk, QuestionLogged question, QWidget* parent = nullptr);

signals:
    void logged();

private:
    void record();

    FloorDesk& m_desk;
    QuestionLogged m_question;
    FloorFrom* m_from;
    QCheckBox* m_wasMisread;
    bool m_isRecording = false; ///< a second press meanwhile is none
};

} // namespace loadwarden::ui
