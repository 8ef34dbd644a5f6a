#pragma once

#include "core/desk/tray.h"
#include "ui/shell/area.h"

#include <QFrame>

#include <vector>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;
class FloorPlaces;

/// What was found when an item was opened, or was about to be, reported by telephone or at the
/// counter: entered in seconds, without a PIN, since it can only hold something back.
class ReportForm : public QFrame {
    Q_OBJECT

public:
    ReportForm(Workstation& workstation, const TraySheet& tray, FloorPlaces& places,
               QWidget* parent = nullptr);

    void focusFirst();

signals:
    void says(const QString& what, const QString& next);
    void reported();
    void left();

private:
    void record();
    /// What was typed and ticked; without anything found it has neither indicator nor faults.
    [[nodiscard]] ItemReported report() const;

    Workstation m_workstation;
    std::string m_item;
    std::string m_cycle;
    QString m_label;
    FloorPlaces& m_places;
    QComboBox* m_indicator;
    std::vector<QCheckBox*> m_faults; ///< in the order of PackageFault
    Field* m_found;
    QLineEdit* m_place;
    Field* m_placeField;
    QLineEdit* m_by;
    QLineEdit* m_note;
    bool m_isRecording = false; ///< a second press meanwhile is none
};

} // namespace loadwarden::ui
