#include "ui/load/printout_section.h"

#include "core/cycle/limits.h"
#include "core/desk/verify_and_release.h"
#include "core/quantities/decimal.h"
#include "core/words/say_terms.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/quantity_edit.h"
#include "ui/parts/time_edit.h"
#include "ui/shell/local_settings.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {

PrintoutSection::PrintoutSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Printout"), parent),
      m_facts(new Facts),
      m_form(new QWidget),
      m_printed(makePrintout()),
      m_grid(new QGridLayout),
      m_record(makeButton(tr("Record what the printout says"), ButtonKind::main)),
      m_error(makeLabel({})),
      m_verify(makeButton(tr("Verify: sign that the record was looked at"))),
      m_again(makeButton(tr("Add a reading"))),
      m_answers(new QVBoxLayout)
{
    column()->addWidget(m_facts);
    column()->addLayout(m_answers);
    auto* const lines = new QVBoxLayout(m_form);
    lines->setContentsMargins(0, space::small, 0, 0);
    lines->addWidget(m_printed);
    m_grid->setHorizontalSpacing(space::large);
    m_grid->setVerticalSpacing(0);
    lines->addLayout(m_grid);
    m_error->setProperty("tone", "bad");
    m_error->hide();
    lines->addWidget(m_error);
    lines->addWidget(m_record, 0, Qt::AlignLeft);
    column()->addWidget(m_form);
    auto* const buttons = new QHBoxLayout;
    buttons->addWidget(m_verify);
    buttons->addWidget(m_again);
    buttons->addStretch();
    column()->addLayout(buttons);
    connect(m_again, &QPushButton::clicked, this, [this] {
        m_isAgain = true;
        show(*this->desk().sheet());
        goTo({});
    });
    connect(m_record, &QPushButton::clicked, this, &PrintoutSection::record);
    connect(m_verify, &QPushButton::clicked, this, &PrintoutSection::verify);
}

QWidget* PrintoutSection::makePrintout()
{
    auto* const printed = new QWidget;
    auto* const grid = new QGridLayout(printed);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::large);
    grid->setVerticalSpacing(0);
    m_sterilizer = new QLineEdit;
    m_program = new QLineEdit;
    m_counter = new QLineEdit;
    m_counter->setMaximumWidth(140);
    const Zone zone = desk().style().zone.value_or(*Zone::find("UTC"));
    m_start = new TimeEdit(zone, desk().now());
    m_end = new TimeEdit(zone, desk().now());
    m_start->clearTime();
    m_end->clearTime();
    m_counterField = new Field(tr("Cycle counter printed"), m_counter);
    m_startField = new Field(tr("Start printed"), m_start);
    m_endField = new Field(tr("End printed"), m_end);
    grid->addWidget(new Field(tr("Sterilizer printed"), m_sterilizer), 0, 0);
    grid->addWidget(new Field(tr("Program printed"), m_program), 0, 1);
    grid->addWidget(m_counterField, 0, 2);
    grid->addWidget(m_startField, 1, 0);
    grid->addWidget(m_endField, 1, 1);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(2, 1);
    return printed;
}

Unit PrintoutSection::unitOf(const SheetParameter& parameter)
{
    const LocalSettings& settings = desk().workstation().settings;
    switch (parameter.parameter) {
    case Parameter::temperature: return settings.temperatureUnit();
    case Parameter::pressure: return settings.pressureUnit();
    case Parameter::exposure:
    case Parameter::drying: return Unit::minutes;
    case Parameter::concentration: return Unit::mgPerL;
    case Parameter::humidity: return Unit::percent;
    }
    return Unit::minutes;
}

void PrintoutSection::makeLines(const LoadSheet& sheet)
{
    std::vector<Parameter> wanted;
    for (const SheetParameter& parameter : sheet.parameters) {
        wanted.push_back(parameter.parameter);
    }
    const bool isSame = std::ranges::equal(wanted, m_lines, {}, {}, &Line::parameter);
    if (isSame) {
        return;
    }
    clearLayout(m_grid);
    m_lines.clear();
    int index = 0;
    for (const SheetParameter& parameter : sheet.parameters) {
        const Unit unit = unitOf(parameter);
        auto* const edit = new QuantityEdit(unit);
        auto* const field = new Field(capital(text(say(parameter.parameter))), edit);
        m_grid->addWidget(field, index / 3, index % 3);
        m_grid->setColumnStretch(index % 3, 1);
        connect(edit->line(), &QLineEdit::returnPressed, this, &PrintoutSection::record);
        m_lines.push_back({parameter.parameter, edit, field});
        ++index;
    }
}

void PrintoutSection::showHints(const LoadSheet& sheet)
{
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        const SheetParameter& parameter = sheet.parameters[i];
        const QString limits = limitsText(parameter, unitOf(parameter));
        QStringList hints;
        QStringList recorded;
        for (const ParameterReading& reading : parameter.readings) {
            recorded << text(sayQuantity(reading.value));
        }
        if (!recorded.isEmpty()) {
            hints << tr("recorded: %1").arg(recorded.join(QStringLiteral(", ")));
        } else if (parameter.isLost) {
            hints << tr("recorded as lost");
        }
        hints << (limits.isEmpty() ? tr("no limit is stated") : limits);
        m_lines[i].field->setHint(hints.join(QStringLiteral("; ")));
    }
}

void PrintoutSection::show(const LoadSheet& sheet)
{
    const bool isTest = sheet.view().isTest();
    const bool canType = sheet.state.ended && !sheet.view().isImported();
    makeLines(sheet);
    showHints(sheet);
    showFacts(sheet);
    showAnswers(sheet);
    const bool hasPrintout = sheet.view().folded.record.load.printout.has_value();
    m_printed->setVisible(!hasPrintout);
    const bool isRead = hasPrintout
                        && std::ranges::none_of(sheet.parameters, [](const SheetParameter& each) {
                               return each.readings.empty() && !each.isLost;
                           });
    m_form->setVisible(canType && !isTest && (!isRead || m_isAgain));
    m_again->setVisible(canType && !isTest && isRead && !m_isAgain);
    const bool isAsked =
        std::ranges::any_of(sheet.view().decision.findings, [](const Finding& finding) {
            return ruleOf(finding.key) == RuleId::verification
                   && finding.key != Key::verificationByOperator;
        });
    const bool isVerified =
        !sheet.view().folded.record.load.verifications.empty() && !isAsked;
    m_verify->setVisible(canType && !isTest && !isVerified);
    setState(!sheet.state.ended ? tr("when the cycle has ended")
             : isVerified       ? tr("looked at and verified")
             : hasPrintout      ? tr("recorded, not verified yet")
                                : tr("not recorded yet"));
    setVisible(!isTest);
    if (std::exchange(m_isVerifyNext, false) && m_verify->isVisible()) {
        m_verify->setFocus();
    }
}

QString PrintoutSection::printedText(const LoadSheet& sheet)
{
    const auto& printed = sheet.view().folded.record.load.printout;
    if (!printed) {
        return {};
    }
    const HouseStyle style = desk().style();
    QStringList said;
    if (!printed->sterilizer.empty()) {
        said << text(printed->sterilizer);
    }
    if (!printed->program.empty()) {
        said << text(printed->program);
    }
    if (printed->counter) {
        said << tr("counter %1").arg(*printed->counter);
    }
    if (printed->start) {
        said << tr("start %1").arg(shortTime(*printed->start, sheet, style));
    }
    if (printed->end) {
        said << tr("end %1").arg(shortTime(*printed->end, sheet, style));
    }
    return said.join(QStringLiteral(", "));
}

void PrintoutSection::showFacts(const LoadSheet& sheet)
{
    m_facts->clear();
    const FactBook book(sheet.record.entries);
    const HouseStyle style = desk().style();
    if (const Fact* const fact = newestFact<PrintoutRecorded>(book, desk().cycle())) {
        m_facts->add(tr("Printed"), printedText(sheet),
                     whoText(fact->current(), sheet, style));
    }
    for (const SheetParameter& parameter : sheet.parameters) {
        for (const ParameterReading& reading : parameter.readings) {
            const QString limits = limitsText(parameter, reading.value.unit);
            const QString value = text(sayQuantity(reading.value));
            m_facts->add(capital(text(say(parameter.parameter))),
                         limits.isEmpty() ? value
                                          : tr("%1   (%2)", "a reading, its limits").arg(value, limits),
                         whoText(reading.act, sheet, style));
        }
        if (parameter.isLost) {
            m_facts->add(capital(text(say(parameter.parameter))), tr("lost, cannot be read"));
        }
    }
    for (const Act& act : sheet.view().folded.record.load.verifications) {
        m_facts->add(tr("Verified"), tr("the record was looked at"), whoText(act, sheet, style));
    }
}

void PrintoutSection::showAnswers(const LoadSheet& sheet)
{
    clearLayout(m_answers);
    for (const Finding& finding : sheet.view().decision.findings) {
        if (finding.key != Key::printoutDiffers) {
            continue;
        }
        std::optional<PrintoutField> field;
        for (std::size_t i = 0; i < printoutFieldCount; ++i) {
            if (finding.subject == textOf(static_cast<PrintoutField>(i))) {
                field = static_cast<PrintoutField>(i);
            }
        }
        const QString name = field ? text(say(*field)) : text(finding.subject);
        auto* const row = new QHBoxLayout;
        row->setSpacing(space::small);
        row->addWidget(makeLabel(tr("The %1 printed is not that of the record.").arg(name)), 1);
        const std::pair<PrintoutAnswer, QString> answers[] = {
            {PrintoutAnswer::recordRight, tr("The record is right")},
            {PrintoutAnswer::wrongCycle, tr("Another cycle's printout")},
            {PrintoutAnswer::wrongSterilizer, tr("Another sterilizer's")}};
        for (const auto& [kind, words] : answers) {
            if (kind == PrintoutAnswer::recordRight && !field) {
                continue;
            }
            auto* const button = makeButton(words);
            button->setAccessibleName(tr("%1: %2", "an answer, about what").arg(words, name));
            connect(button, &QPushButton::clicked, this, [this, kind = kind, field] {
                answer(kind, kind == PrintoutAnswer::recordRight ? field : std::nullopt);
            });
            row->addWidget(button);
        }
        m_answers->addLayout(row);
    }
}

QString PrintoutSection::beyondLimits(const Line& line) const
{
    const auto value = line.edit->value();
    const auto& sheet = *const_cast<PrintoutSection*>(this)->desk().sheet();
    const auto found =
        std::ranges::find(sheet.parameters, line.parameter, &SheetParameter::parameter);
    if (!value || found == sheet.parameters.end()) {
        return {};
    }
    const Limit limit{.parameter = line.parameter, .least = found->least, .most = found->most};
    const auto& atmosphere = sheet.view().folded.record.atmosphere;
    const bool isBelow = checkLeast(limit, value->value, atmosphere).against == Against::beyond;
    const bool isAbove = checkMost(limit, value->value, atmosphere).against == Against::beyond;
    return isBelow   ? tr("Below its limit. Is that what is printed?")
           : isAbove ? tr("Above its limit. Is that what is printed?")
                     : QString();
}

void PrintoutSection::record()
{
    m_error->hide();
    PrintoutRecorded printout{.program = m_program->text().trimmed().toStdString(),
                              .sterilizer = m_sterilizer->text().trimmed().toStdString(),
                              .counter = {},
                              .start = {},
                              .end = {}};
    const bool takesPrintout = m_printed->isVisibleTo(this);
    QWidget* wrong = nullptr;
    const auto check = [&](Field* field, QWidget* editor, const QString& says) {
        field->setError(says);
        wrong = wrong == nullptr && !says.isEmpty() ? editor : wrong;
    };
    if (takesPrintout) {
        const std::string counter = m_counter->text().trimmed().toStdString();
        printout.counter = counter.empty() ? std::nullopt : parseDecimal(counter, 0);
        check(m_counterField, m_counter,
              counter.empty() || printout.counter ? QString()
                                                  : tr("Type the counter as a whole number."));
        for (const auto& [edit, field, into] :
             {std::tuple(m_start, m_startField, &printout.start),
              std::tuple(m_end, m_endField, &printout.end)}) {
            check(field, edit, edit->isEmpty() ? QString() : edit->whatIsWrong());
            *into = edit->isEmpty() ? std::nullopt : edit->value();
        }
    }
    std::vector<ToRecord> acts;
    QString beyond;
    QWidget* unlikely = nullptr;
    for (const Line& line : m_lines) {
        if (line.edit->isEmpty()) {
            line.field->setError({});
            continue;
        }
        check(line.field, line.edit, line.edit->whatIsWrong());
        if (const auto value = line.edit->value()) {
            acts.push_back({.act = PhysicalRead{line.parameter, *value},
                            .subjects = {desk().cycle()}});
            if (const QString says = beyondLimits(line); !says.isEmpty()) {
                beyond += text(value->typed) + u' ' + QString::number(static_cast<int>(line.parameter));
                line.field->setError(says);
                unlikely = unlikely == nullptr ? line.edit : unlikely;
            }
        }
    }
    if (wrong != nullptr) {
        wrong->setFocus();
        return;
    }
    const bool isPrinted = !printout.program.empty() || !printout.sterilizer.empty()
                           || printout.counter || printout.start || printout.end;
    if (takesPrintout && isPrinted) {
        acts.insert(acts.begin(), {.act = printout, .subjects = {desk().cycle()}});
    }
    if (acts.empty()) {
        m_error->setText(tr("Type what stands on the printout first."));
        m_error->show();
        return;
    }
    if (!beyond.isEmpty() && beyond != m_askedAbout) {
        m_askedAbout = beyond;
        m_record->setText(tr("Record it as typed"));
        unlikely->setFocus();
        return;
    }
    desk().record(
        [acts](Office&) { return acts; }, tr("What the printout says is recorded."),
        [this] {
            for (const Line& line : m_lines) {
                line.edit->line()->clear();
                line.field->setError({});
            }
            m_askedAbout.clear();
            m_isAgain = false;
            m_record->setText(tr("Record what the printout says"));
            m_isVerifyNext = true;
        },
        [this](const QString& why) {
            m_error->setText(why);
            m_error->setVisible(!why.isEmpty());
        });
}

void PrintoutSection::verify()
{
    QStringList seen;
    const LoadSheet& sheet = *desk().sheet();
    if (const QString printed = printedText(sheet); !printed.isEmpty()) {
        seen << tr("Printed: %1").arg(printed);
    } else {
        seen << tr("Nothing of the printout's own is recorded: no counter, no times");
    }
    for (const SheetParameter& parameter : sheet.parameters) {
        for (const ParameterReading& reading : parameter.readings) {
            const QString limits = limitsText(parameter, reading.value.unit);
            const QString what = capital(text(say(parameter.parameter)));
            const QString value = text(sayQuantity(reading.value));
            seen << (limits.isEmpty() ? tr("%1: %2").arg(what, value)
                                      : tr("%1: %2 (%3)").arg(what, value, limits));
        }
        if (parameter.readings.empty()) {
            seen << tr("%1: no reading").arg(capital(text(say(parameter.parameter))));
        }
    }
    desk().signOnSight(
        tr("The physical record of %1 was looked at and is this cycle's").arg(desk().lot()), seen,
        tr("Sign the verification"),
        [](Office& office, const SignedIn& who, Signature signature, const Sight& sight) {
            return verifyOnSight(office, who, std::move(signature), sight);
        },
        tr("The physical record is verified."));
}

void PrintoutSection::answer(PrintoutAnswer answer, std::optional<PrintoutField> field)
{
    const QString what = field ? tr("%1: %2").arg(text(say(*field)), text(say(answer)))
                               : text(say(answer));
    desk().sign(tr("On the printout of %1: %2").arg(desk().lot(), what), {},
                tr("Sign the answer"),
                [act = PrintoutAnswered{answer, field}, cycle = desk().cycle()](Office&) {
                    return std::vector{ToRecord{.act = act, .subjects = {cycle}}};
                },
                tr("The answer is recorded."));
}

void PrintoutSection::goTo(const QString& subject)
{
    for (const Line& line : m_lines) {
        if (subject == text(std::string(textOf(line.parameter))) && line.edit->isVisibleTo(this)) {
            line.edit->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
    const LoadSheet* const sheet = desk().sheet();
    const bool needsVerification =
        sheet != nullptr
        && std::ranges::any_of(sheet->view().decision.findings, [](const Finding& finding) {
               return ruleOf(finding.key) == RuleId::verification;
           });
    if (subject.isEmpty() && needsVerification && !m_printed->isVisibleTo(this)) {
        m_verify->setFocus(Qt::OtherFocusReason);
        return;
    }
    SheetSection::goTo(subject);
}

} // namespace loadwarden::ui
