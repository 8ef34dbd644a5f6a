#pragma once

#include "core/desk/tray.h"

#include <QFrame>

#include <vector>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;
class FloorDesk;
class FloorFrom;

/// What was found when an item was opened, or was about to be, reported by telephone or at the
/// counter: entered in seconds, without a PIN, since it can only hold something back.
class ReportForm : public QFrame {
    Q_OBJECT

public:
    /// The desk outlives the form.
    ReportForm(FloorDesk& desk, const TraySheet& tray, QWidget* parent = nullptr);

    void focusFirst();

signals:
    void reported();
    void left();

private:
    void record();
    /// What was typed and ticked; without anything found it has neither indicator nor faults.
    [[nodiscard]] ItemReported report() const;

    FloorDesk& m_desk;
    TraySheet m_tray;
    QComboBox* m_indicator;
    std::vector<QCheckBox*> m_faults; ///< in the order of PackageFault
    Field* m_found;
    FloorFrom* m_from;
    QLineEdit* m_note;
    bool m_isRecording = false; ///< a second press meanwhile is none
};

} // namespace loadwarden::ui
