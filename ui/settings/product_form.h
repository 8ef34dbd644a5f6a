#pragma once

#include "core/desk/registers.h"
#include "ui/settings/number_edit.h"
#include "ui/settings/register_form.h"

#include <array>
#include <string>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class MethodsEdit;

/// An indicator product by its instructions for use: added or revised by a supervisor.
class ProductForm : public RegisterForm {
    Q_OBJECT

public:
    /// Without an id something new.
    ProductForm(const Workstation& workstation, std::string id);

    /// Where nobody has typed, what is recorded.
    void show(const Registers& registers);

protected:
    std::optional<Wanted> wanted() override;
    void putBack() override;

private:
    void makeCommon();
    void makeChemical();
    void makeBiological();
    void showWhatApplies();
    [[nodiscard]] bool isBiological() const;
    [[nodiscard]] Response response() const;
    bool readMethods(IndicatorProduct& product);
    bool readChemical(IndicatorProduct& product);
    bool readBiological(IndicatorProduct& product);
    bool isNumber(Field* field, const NumberEdit* edit, bool isNeeded);

    std::string m_id;
    ProductRecorded m_recorded;

    QLineEdit* m_name;
    QComboBox* m_kind;
    MethodsEdit* m_methods;
    QLineEdit* m_cycleTypes;
    Field* m_nameField = nullptr;
    Field* m_methodsField = nullptr;

    QWidget* m_chemical = nullptr;
    QComboBox* m_type;
    QComboBox* m_response;
    NumberEdit* m_readWithin;
    Field* m_readWithinField = nullptr;
    QWidget* m_sheet = nullptr;
    NumberEdit* m_leastTime;
    NumberEdit* m_mostTime;
    NumberEdit* m_leastCelsius;
    NumberEdit* m_mostCelsius;
    std::array<Field*, 4> m_sheetFields{};
    QCheckBox* m_noDrying;

    QWidget* m_biological = nullptr;
    QComboBox* m_species;
    NumberEdit* m_release;
    NumberEdit* m_last;
    NumberEdit* m_latest;
    NumberEdit* m_startWithin;
    std::array<Field*, 4> m_timeFields{};
    QComboBox* m_control;
    QLineEdit* m_implantTypes;
    Field* m_implantField = nullptr;
    QCheckBox* m_activation;
    QCheckBox* m_process;
};

} // namespace loadwarden::ui
