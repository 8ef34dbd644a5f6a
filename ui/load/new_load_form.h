#pragma once

#include "core/desk/choices.h"
#include "core/desk/reservations.h"
#include "ui/shell/area.h"

#include <QFrame>

class QComboBox;
class QLabel;
class QPushButton;

namespace loadwarden::ui {

class ChoiceRow;
class Field;

/// Reserves the next lot control number of a sterilizer for a load or a test.
class NewLoadForm : public QFrame {
    Q_OBJECT

public:
    explicit NewLoadForm(Workstation& workstation, QWidget* parent = nullptr);

    /// Reads the registers anew and takes the keyboard. `note` is recorded with the reservation;
    /// the choices may be empty.
    void ask(const QString& sterilizer = {}, const QString& specification = {},
             const QString& note = {});
    void focusFirst();
    /// Once the registers are read, the first program of that purpose is chosen.
    void wantPurpose(Purpose purpose) { m_wantedPurpose = purpose; }

signals:
    void reserved(const QString& cycle, const QString& lot);
    void left();

private:
    void fill(const Choices& choices);
    /// Null: none is chosen.
    [[nodiscard]] const SterilizerChoice* chosenSterilizer() const;
    /// The programs that fit the sterilizer; of them the wanted one is chosen, where it is there.
    void fillPrograms(const QString& wanted);
    void reserve();
    /// Says where one is not in service.
    void sterilizerChosen();
    void specificationChosen();

    Workstation m_workstation;
    QComboBox* m_sterilizer;
    Field* m_sterilizerField;
    QComboBox* m_specification;
    QPushButton* m_allPrograms;
    QComboBox* m_purpose;
    QLabel* m_note;
    Choices m_choices;
    QString m_wantedSterilizer;
    QString m_wantedSpecification;
    QString m_noteText;
    std::optional<Purpose> m_wantedPurpose;
    bool m_offersAll = false;   ///< also programs that do not fit the sterilizer
    bool m_isReserving = false; ///< a second press meanwhile is none
};

} // namespace loadwarden::ui
