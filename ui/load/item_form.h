#pragma once

#include "core/acts/kinds/item_acts.h"
#include "core/desk/choices.h"
#include "core/quantities/method.h"

#include <QWidget>

#include <optional>
#include <string>
#include <vector>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace loadwarden::ui {

class ChoiceRow;
class Field;
class PeroxideForm;

/// An item as it goes into a load: its label, and what is said of it. What stays the same from one
/// item to the next stays chosen; implant and devices are asked for anew.
class ItemForm : public QWidget {
    Q_OBJECT

public:
    explicit ItemForm(QWidget* parent = nullptr);

    /// What the registers offer, and by which method the load is run.
    void offer(const Choices& choices, Method method);

    /// An item without ids; nullopt: something is wrong, and is said beside its field. Indicators
    /// inside are one each.
    [[nodiscard]] std::optional<ItemAdded> item(const QString& label, const Choices& choices);
    [[nodiscard]] QString label() const;

    /// It is recorded: what another item must not take over by mistake is cleared.
    void accepted(const QString& label);
    void refused(const QString& label, const QString& why);
    void focusLabel();

    /// The devices that are chosen: dv-
    [[nodiscard]] const std::vector<std::string>& deviceIds() const { return m_deviceIds; }
    /// What speaks against them in this load; empty: nothing.
    void setMisfit(const QString& says);

signals:
    /// Others are chosen.
    void devicesChanged();
    /// Somebody wants to add it.
    void wanted(const QString& label);

private:
    void makeFields(QGridLayout* grid);
    void showDevices();
    [[nodiscard]] bool takeExpiry(ItemAdded& item);
    void takeIndicators(ItemAdded& item, const Choices& choices) const;

    QLineEdit* m_label;
    Field* m_labelField;
    ChoiceRow* m_implant;
    QComboBox* m_packaging;
    QLineEdit* m_expires;
    Field* m_expiresField;
    QComboBox* m_device;
    QLabel* m_devices; ///< those that were chosen
    QPushButton* m_noDevices;
    QLabel* m_misfit;
    std::vector<std::string> m_deviceIds;
    QComboBox* m_outside;
    QComboBox* m_inside;
    QComboBox* m_insideCount;
    QLineEdit* m_insidePlace;
    QCheckBox* m_seenThrough;
    PeroxideForm* m_peroxide;
    std::size_t m_filled = 0; ///< how many choices the boxes were filled with
    Method m_filledFor{};     ///< and for which method
};

} // namespace loadwarden::ui
