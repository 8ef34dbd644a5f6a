#include "ui/settings/device_form.h"

#include "core/quantities/method_words.h"
#include "ui/parts/field.h"
#include "ui/settings/number_edit.h"
#include "ui/settings/temperature_edit.h"
#include "ui/settings/word_list.h"

#include <QHBoxLayout>
#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int decimalsOfMinutes = 3;

/// What is typed and chosen in a widget, also what is wrong, into another that is made alike.
void copyTyped(const QWidget* from, const QWidget* to)
{
    const auto lines = to->findChildren<QLineEdit*>();
    const auto sources = from->findChildren<QLineEdit*>();
    for (qsizetype i = 0; i < lines.size(); ++i) {
        lines[i]->setText(sources[i]->text());
    }
    const auto lists = to->findChildren<QComboBox*>();
    const auto chosen = from->findChildren<QComboBox*>();
    for (qsizetype i = 0; i < lists.size(); ++i) {
        lists[i]->setCurrentIndex(chosen[i]->currentIndex());
    }
}

/// A button as wide as its words in a row of its own.
QWidget* leftAligned(QPushButton* button)
{
    auto* const row = new QWidget;
    auto* const layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, space::small);
    layout->addWidget(button);
    layout->addStretch();
    return row;
}

} // namespace

DeviceForm::DeviceForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::DeviceRecorded,
                   tr("A lead or a supervisor records devices.")),
      m_id(std::move(id)),
      m_name(new QLineEdit),
      m_aeration(new NumberEdit(tr("min"))),
      m_nameField(nullptr),
      m_aerationField(nullptr)
{
    if (isNew()) {
        m_recorded.allowedCycles.emplace_back(); // to be filled in
    }
    beginGroup(isNew() ? tr("New device") : tr("What its instructions for use say"),
               tr("Type what the maker's instructions for use (IFU) say, not what is usual: the "
                  "program of each load is compared with it. What is left empty is not stated."));
    m_nameField = addField("name", tr("&Name"), m_name, tr("As your department calls it."));
    m_aerationField = addField("aerationMinutes", tr("Aeration that they ask for"), m_aeration,
                               tr("Empty: not stated."));
    auto* const add = makeButton(tr("Add an allowed cycle"));
    keepLast(leftAligned(add));
    showToWhoMay(add);
    connect(add, &QPushButton::clicked, this, [this] {
        addCycle();
        goTo(m_cycles.back().method);
    });
    addButtons(isNew() ? tr("Record the device") : tr("Record the revision"));
    setFocusProxy(m_name);
    putBack();
}

void DeviceForm::addCycle()
{
    const std::size_t index = m_cycles.size();
    const QString cycle = tr("Allowed cycle %1").arg(index + 1);
    CycleFields made{.method = makeWordList(methodWords),
                     .airRemoval = makeWordList(airRemovalWords),
                     .temperature = new TemperatureEdit,
                     .drying = new NumberEdit(tr("min"), decimalsOfMinutes),
                     .least = new NumberEdit(tr("min"), decimalsOfMinutes),
                     .most = new NumberEdit(tr("min"), decimalsOfMinutes),
                     .program = new QLineEdit,
                     .model = new QLineEdit};
    beginGroup(cycle);
    made.group = group();
    const auto named = [&cycle](const QString& label) {
        return tr("%1, %2", "an allowed cycle, a field of it").arg(cycle, label.toLower());
    };
    const auto add = [&](const char* member, const QString& label, QWidget* editor,
                         const QString& hint = {}) {
        const std::string path = "allowedCycles/" + std::to_string(index) + '/' + member;
        Field* const field = addField(path.c_str(), label, editor, hint);
        // Those of several cycles are told apart by their names.
        QWidget* const line = editor->focusProxy() == nullptr ? editor : editor->focusProxy();
        editor->setAccessibleName(named(label));
        line->setAccessibleName(named(label));
        return field;
    };
    made.methodField = add("method", tr("Method"), made.method);
    add("airRemoval", tr("Air removal"), made.airRemoval, tr("For steam."));
    made.temperatureField = add("temperature", tr("Temperature"), made.temperature,
                                tr("Where both are stated, °C counts."));
    made.temperature->setName(named(tr("Temperature")));
    made.dryingField = add("dryingMs", tr("Drying"), made.drying);
    made.leastField = add("leastMs", tr("Shortest exposure"), made.least);
    made.mostField = add("mostMs", tr("Longest exposure"), made.most);
    add("program", tr("Program"), made.program, tr("Where they name one."));
    add("sterilizerModel", tr("Sterilizer model"), made.model, tr("Where they name one."));
    auto* const away = makeButton(tr("Take this cycle away"));
    away->setAccessibleName(tr("Take allowed cycle %1 away").arg(index + 1));
    addWide(leftAligned(away));
    showToWhoMay(away);
    connect(away, &QPushButton::clicked, this, [this, index] { takeAway(index); });
    m_cycles.push_back(made);
    put(made, {});
    emit regrouped();
}

void DeviceForm::takeAway(std::size_t cycle)
{
    for (std::size_t i = cycle; i + 1 < m_cycles.size(); ++i) {
        copyTyped(m_cycles[i + 1].group, m_cycles[i].group);
    }
    removeGroup(m_cycles.back().group);
    m_cycles.pop_back();
    for (const CycleFields& each : m_cycles) {
        // What was said of another is of no use there.
        for (Field* const field : {each.methodField, each.temperatureField, each.dryingField,
                                   each.leastField, each.mostField}) {
            setError(field, {});
        }
    }
    if (m_cycles.empty()) {
        goTo(m_aeration);
    } else {
        goTo(m_cycles[std::min(cycle, m_cycles.size() - 1)].method);
    }
}

void DeviceForm::show(const Registers& registers)
{
    const auto found = std::ranges::find(registers.devices, m_id, &RegisteredDevice::id);
    if (found != registers.devices.end() && !isTouched()) {
        m_recorded = found->recorded.device;
        putBack();
    }
}

void DeviceForm::putBack()
{
    m_name->setText(text(m_recorded.name));
    m_aeration->setWhole(m_recorded.aerationMinutes);
    while (m_cycles.size() > m_recorded.allowedCycles.size()) {
        removeGroup(m_cycles.back().group);
        m_cycles.pop_back();
    }
    while (m_cycles.size() < m_recorded.allowedCycles.size()) {
        addCycle();
    }
    for (std::size_t i = 0; i < m_cycles.size(); ++i) {
        put(m_cycles[i], m_recorded.allowedCycles[i]);
    }
    filled();
}

void DeviceForm::put(const CycleFields& fields, const AllowedCycle& cycle)
{
    choose(fields.method, cycle.method);
    choose(fields.airRemoval, cycle.airRemoval);
    fields.temperature->set({cycle.temperature, cycle.inFahrenheit});
    fields.drying->setMs(cycle.dryingMs);
    fields.least->setMs(cycle.leastMs);
    fields.most->setMs(cycle.mostMs);
    fields.program->setText(text(cycle.program));
    fields.model->setText(text(cycle.sterilizerModel));
}

AllowedCycle DeviceForm::in(const CycleFields& fields)
{
    const StatedTemperature stated = fields.temperature->value();
    return {.method = chosenIn<Method>(fields.method),
            .airRemoval = chosenIn<AirRemoval>(fields.airRemoval),
            .temperature = stated.temperature,
            .inFahrenheit = stated.inFahrenheit,
            .leastMs = fields.least->ms(),
            .mostMs = fields.most->ms(),
            .dryingMs = fields.drying->ms(),
            .program = fields.program->text().trimmed().toStdString(),
            .sterilizerModel = fields.model->text().trimmed().toStdString()};
}

bool DeviceForm::check(const CycleFields& fields)
{
    bool isGood = true;
    const auto say = [&](Field* field, const QString& wrong) {
        setError(field, wrong);
        isGood = isGood && wrong.isEmpty();
    };
    say(fields.temperatureField,
        fields.temperature->isGood() ? QString() : tr("Type degrees, with at most two decimals."));
    for (const auto& [field, edit] :
         {std::pair(fields.dryingField, fields.drying), std::pair(fields.leastField, fields.least),
          std::pair(fields.mostField, fields.most)}) {
        say(field, edit->isGood() ? QString() : tr("Type minutes, with at most three decimals."));
    }
    const AllowedCycle cycle = in(fields);
    if (cycle.leastMs && cycle.mostMs && *cycle.mostMs < *cycle.leastMs) {
        say(fields.mostField, tr("It is shorter than the shortest. Check both."));
    }
    const bool isEmpty = isGood && cycle == AllowedCycle{};
    say(fields.methodField,
        isEmpty ? tr("Nothing is stated. Choose the method, or take this cycle away.") : QString());
    return isGood;
}

std::optional<Wanted> DeviceForm::wanted()
{
    bool isGood = needs(m_nameField, tr("Type its name."));
    setError(m_aerationField, m_aeration->isGood() ? QString() : tr("Type whole minutes."));
    isGood = m_aeration->isGood() && isGood;
    const QString name = m_name->text().trimmed();
    Device made{
        .name = name.toStdString(), .allowedCycles = {}, .aerationMinutes = m_aeration->whole()};
    for (const CycleFields& each : m_cycles) {
        isGood = check(each) && isGood;
        made.allowedCycles.push_back(in(each));
    }
    if (!isGood) {
        return std::nullopt;
    }
    return Wanted{.acts = {{.act = DeviceRecorded{made},
                            .subjects = {isNew() ? RandomIdSource().next("dv") : m_id}}},
                  .what = {},
                  .seen = {},
                  .done = tr("The device %1 is recorded.").arg(name)};
}

} // namespace loadwarden::ui
