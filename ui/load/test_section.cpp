#include "ui/load/test_section.h"

#include "core/quantities/decimal.h"
#include "core/words/say_any_act.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

QLineEdit* makeNumber()
{
    auto* const line = new QLineEdit;
    line->setMaximumWidth(140);
    return line;
}

std::optional<bool> yesNo(const ChoiceRow* row)
{
    return row->chosen() < 0 ? std::nullopt : std::optional(row->chosen() == 0);
}

} // namespace

TestSection::TestSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Test"), parent),
      m_facts(new Facts),
      m_conditions(makeConditions()),
      m_leak(makeLeak()),
      m_physical(makePhysical()),
      m_void(makeVoid())
{
    column()->addWidget(m_facts);
    for (QWidget* const form : {m_conditions, m_leak, m_physical, m_void}) {
        column()->addWidget(form);
    }
}

QWidget* TestSection::makeConditions()
{
    auto* const form = new QWidget;
    auto* const grid = new QGridLayout(form);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::large);
    m_empty = new ChoiceRow(tr("Chamber empty but for the test"), {tr("Yes"), tr("No")}, -1);
    m_drying = new ChoiceRow(tr("Drying was run"), {tr("Yes"), tr("No")}, -1);
    m_minutes = makeNumber();
    m_celsius = makeNumber();
    m_minutesField = new Field(tr("Exposure in minutes"), m_minutes);
    m_celsiusField = new Field(tr("Exposure temperature in °C"), m_celsius);
    m_emptyField = new Field(tr("Chamber empty but for the test"), m_empty);
    m_dryingField = new Field(tr("Drying was run"), m_drying);
    grid->addWidget(m_emptyField, 0, 0);
    grid->addWidget(m_dryingField, 0, 1);
    grid->addWidget(m_minutesField, 1, 0);
    grid->addWidget(m_celsiusField, 1, 1);
    auto* const button = makeButton(tr("Record the conditions"));
    connect(button, &QPushButton::clicked, this, &TestSection::recordConditions);
    grid->addWidget(button, 2, 0, Qt::AlignLeft);
    return form;
}

QWidget* TestSection::makeLeak()
{
    auto* const form = new QWidget;
    auto* const grid = new QGridLayout(form);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::large);
    m_settled = makeNumber();
    m_leakMinutes = makeNumber();
    m_rise = makeNumber();
    m_settledField = new Field(tr("Settling in minutes"), m_settled);
    m_leakMinutesField = new Field(tr("Measured for minutes"), m_leakMinutes);
    m_riseField = new Field(tr("Pressure rise in mbar"), m_rise);
    grid->addWidget(m_settledField, 0, 0);
    grid->addWidget(m_leakMinutesField, 0, 1);
    grid->addWidget(m_riseField, 0, 2);
    auto* const button = makeButton(tr("Record the leak test"), ButtonKind::main);
    connect(button, &QPushButton::clicked, this, &TestSection::recordLeak);
    grid->addWidget(button, 1, 0, Qt::AlignLeft);
    return form;
}

QWidget* TestSection::makePhysical()
{
    auto* const form = new QWidget;
    auto* const row = new QHBoxLayout(form);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(makeLabel(tr("The physical values of this qualification cycle"), Type::body, false));
    auto* const good = makeButton(tr("Sign: good"));
    auto* const bad = makeButton(tr("Sign: not good"));
    connect(good, &QPushButton::clicked, this, [this] { judge(true); });
    connect(bad, &QPushButton::clicked, this, [this] { judge(false); });
    row->addWidget(good);
    row->addWidget(bad);
    row->addStretch();
    return form;
}

QWidget* TestSection::makeVoid()
{
    auto* const form = new QWidget;
    auto* const row = new QHBoxLayout(form);
    row->setContentsMargins(0, 0, 0, 0);
    m_why = new QLineEdit;
    m_whyField = new Field(tr("Why the test is void"), m_why, tr("a lead or supervisor signs it"));
    row->addWidget(m_whyField, 1);
    auto* const button = makeButton(tr("Sign the reason"));
    connect(button, &QPushButton::clicked, this, &TestSection::explain);
    row->addWidget(button, 0, Qt::AlignVCenter);
    return form;
}

void TestSection::show(const LoadSheet& sheet)
{
    const bool isTest = sheet.view().isTest();
    setVisible(isTest);
    if (!isTest) {
        return;
    }
    m_facts->clear();
    for (Field* const field : {m_emptyField, m_dryingField, m_minutesField, m_celsiusField,
                               m_settledField, m_leakMinutesField, m_riseField}) {
        field->setHint({});
    }
    const FactBook book(sheet.record.entries);
    for (const std::uint32_t index : book.about(desk().cycle())) {
        const Fact& fact = book.facts()[index];
        const AnyAct& act = fact.current().act;
        const bool isOfTest = std::holds_alternative<TestConditionsRecorded>(act)
                              || std::holds_alternative<LeakRead>(act)
                              || std::holds_alternative<TestPhysicalJudged>(act)
                              || std::holds_alternative<TestVoidExplained>(act);
        if (fact.stands() && isOfTest) {
            const ActSaid said =
                say(act, [&](std::string_view id) { return sheet.record.names.of(id); },
                    desk().style());
            showRecorded(act);
            m_facts->add(text(said.what), text(said.value),
                         whoText(fact.current(), sheet, desk().style()));
        }
    }
    const bool hasEnded = sheet.state.ended;
    m_conditions->setVisible(sheet.state.purpose == Purpose::bowieDick && sheet.state.started);
    m_leak->setVisible(sheet.state.purpose == Purpose::leak && hasEnded);
    m_physical->setVisible(sheet.state.purpose == Purpose::qualification && hasEnded);
    m_void->setVisible(hasEnded && sheet.view().judgement.result == TestResult::voided);
    setState(hasEnded ? QString() : tr("when the cycle has ended"));
}

void TestSection::showRecorded(const AnyAct& act)
{
    const auto hint = [](Field* field, const QString& value) {
        if (!value.isEmpty()) {
            field->setHint(tr("recorded: %1").arg(value));
        }
    };
    const auto yesOrNo = [](const std::optional<bool>& said) {
        return !said ? QString() : *said ? tr("yes") : tr("no");
    };
    const auto number = [](const std::optional<TypedNumber>& said) {
        return said ? text(said->typed) : QString();
    };
    if (const auto* const conditions = std::get_if<TestConditionsRecorded>(&act)) {
        hint(m_emptyField, yesOrNo(conditions->chamberEmpty));
        hint(m_dryingField, yesOrNo(conditions->dryingRun));
        hint(m_minutesField, number(conditions->exposureMinutes));
        hint(m_celsiusField, number(conditions->exposureCelsius));
    } else if (const auto* const leak = std::get_if<LeakRead>(&act)) {
        hint(m_settledField, number(leak->settledMinutes));
        hint(m_leakMinutesField, number(leak->minutes));
        hint(m_riseField, number(leak->riseMbar));
    }
}

bool TestSection::take(Field* field, QLineEdit* line, std::optional<TypedNumber>& into)
{
    const std::string typed = line->text().trimmed().replace(u',', u'.').toStdString();
    const auto number = parseDecimal(typed, 3);
    const bool isRight = typed.empty() || number.has_value();
    field->setError(isRight ? QString() : tr("Type a number, as 3.5."));
    if (!isRight) {
        line->setFocus();
    } else if (number) {
        into = TypedNumber{typed, *number};
    }
    return isRight;
}

void TestSection::recordConditions()
{
    TestConditionsRecorded conditions{.chamberEmpty = yesNo(m_empty),
                                      .dryingRun = yesNo(m_drying),
                                      .exposureMinutes = {},
                                      .exposureCelsius = {}};
    if (!take(m_minutesField, m_minutes, conditions.exposureMinutes)
        || !take(m_celsiusField, m_celsius, conditions.exposureCelsius)) {
        return;
    }
    if (!conditions.chamberEmpty && !conditions.dryingRun && !conditions.exposureMinutes
        && !conditions.exposureCelsius) {
        m_minutesField->setError(tr("Say at least one of these."));
        return;
    }
    desk().record(
        conditions, {}, tr("The conditions of the test are recorded."),
        [this] {
            m_minutes->clear();
            m_celsius->clear();
            m_empty->choose(-1);
            m_drying->choose(-1);
        },
        [this](const QString& why) { m_minutesField->setError(why); });
}

void TestSection::recordLeak()
{
    LeakRead leak;
    if (!take(m_settledField, m_settled, leak.settledMinutes)
        || !take(m_leakMinutesField, m_leakMinutes, leak.minutes)
        || !take(m_riseField, m_rise, leak.riseMbar)) {
        return;
    }
    if (!leak.riseMbar) {
        m_riseField->setError(tr("Type by how much the pressure rose."));
        m_rise->setFocus();
        return;
    }
    desk().record(
        leak, {}, tr("The leak test is recorded."),
        [this] {
            for (QLineEdit* const line : {m_settled, m_leakMinutes, m_rise}) {
                line->clear();
            }
        },
        [this](const QString& why) { m_riseField->setError(why); });
}

void TestSection::judge(bool good)
{
    desk().sign(good ? tr("The physical values of %1 are good").arg(desk().lot())
                     : tr("The physical values of %1 are not good").arg(desk().lot()),
                {}, tr("Sign it"),
                [good, cycle = desk().cycle()](Office&) {
                    return std::vector{
                        ToRecord{.act = TestPhysicalJudged{good}, .subjects = {cycle}}};
                },
                tr("It is signed."));
}

void TestSection::explain()
{
    const std::string why = m_why->text().trimmed().toStdString();
    if (why.empty()) {
        m_whyField->setError(tr("Type why the test is void."));
        m_why->setFocus();
        return;
    }
    m_whyField->setError({});
    desk().sign(tr("Test %1 is void").arg(desk().lot()), {text(why)}, tr("Sign the reason"),
                    [why, cycle = desk().cycle()](Office&) {
                        return std::vector{
                            ToRecord{.act = TestVoidExplained{why}, .subjects = {cycle}}};
                    },
                    tr("The reason is signed."), [this] { m_why->clear(); });
}

} // namespace loadwarden::ui
