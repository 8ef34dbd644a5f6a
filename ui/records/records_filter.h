#pragma once

#include "core/desk/records.h"

#include <QWidget>

#include <optional>
#include <string>
#include <vector>

class QComboBox;
class QHBoxLayout;
class QLineEdit;

namespace loadwarden::ui {

class Field;

/// By what loads and tests are looked for: a row of fields. What was typed stays until it is
/// cleared.
class RecordsFilter : public QWidget {
    Q_OBJECT

public:
    explicit RecordsFilter(QWidget* parent = nullptr);

    /// What sterilizers and people can be chosen; what is chosen stays.
    void offer(const RecordChoices& choices);

    /// What is asked for, but for the lot of a product, which is a number as typed. nullopt:
    /// something is wrong, and its field says what.
    [[nodiscard]] std::optional<RecordQuestion> question();
    [[nodiscard]] std::string productLot() const;
    /// No lot of a product has the number that was typed.
    void sayUnknownLot();
    /// Whether anything is asked for.
    [[nodiscard]] bool isEmpty() const;
    void clear();
    void focusFirst();

signals:
    /// Somebody has said that this is what is to be found.
    void asked();
    /// Somebody goes on to what was found.
    void left();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] QLineEdit* addLine(const QString& label, const QString& example, Field*& field);
    [[nodiscard]] QComboBox* addChoice(const QString& label);
    [[nodiscard]] std::optional<Date> dayOf(QLineEdit* line, Field* field, bool& isGood);

    QHBoxLayout* m_row = nullptr;
    Field* m_lotField = nullptr;
    Field* m_labelField = nullptr;
    Field* m_fromField = nullptr;
    Field* m_toField = nullptr;
    Field* m_productField = nullptr;
    QLineEdit* m_lot;
    QLineEdit* m_label;
    QComboBox* m_sterilizer;
    QLineEdit* m_from;
    QLineEdit* m_to;
    QComboBox* m_signed;
    QComboBox* m_person;
    QLineEdit* m_product;
};

} // namespace loadwarden::ui
