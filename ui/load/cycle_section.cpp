#include "ui/load/cycle_section.h"

#include "core/desk/planned_program.h"
#include "core/quantities/decimal.h"
#include "core/words/say_terms.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"
#include "ui/parts/time_edit.h"

#include <QComboBox>
#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

Zone zoneOf(CycleDesk& desk)
{
    return desk.style().zone.value_or(*Zone::find("UTC"));
}

ClockSource clockOf(const LoadSheet& sheet)
{
    const EvidenceRecord& record = sheet.view().folded.record;
    return record.test ? record.test->clock : record.load.clock;
}

/// Fields beside each other, and below them what records them.
FlowLayout* makeRow(QWidget* form, QPushButton* record)
{
    auto* const column = new QVBoxLayout(form);
    column->setContentsMargins(0, space::small, 0, 0);
    column->setSpacing(0);
    auto* const fields = new FlowLayout;
    fields->setSpacing(space::medium);
    column->addLayout(fields);
    column->addWidget(record, 0, Qt::AlignLeft);
    return fields;
}

} // namespace

CycleSection::CycleSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Cycle"), parent),
      m_facts(new Facts),
      m_startForm(makeStart()),
      m_endForm(makeEnd()),
      m_alarmOpen(makeButton(tr("Record an alarm"))),
      m_alarmForm(makeAlarm())
{
    column()->addWidget(m_facts);
    column()->addWidget(m_startForm);
    column()->addWidget(m_endForm);
    column()->addWidget(m_alarmOpen, 0, Qt::AlignLeft);
    column()->addWidget(m_alarmForm);
    m_alarmForm->hide();
    connect(m_alarmOpen, &QPushButton::clicked, this, [this] {
        m_alarmOpen->hide();
        m_alarmForm->show();
        m_alarm->setFocus();
    });
    connect(m_alarm, &QLineEdit::returnPressed, this, &CycleSection::recordAlarm);
    connect(m_startCounter, &QLineEdit::returnPressed, this, &CycleSection::start);
    connect(m_startTime, &TimeEdit::edited, this, [this] { m_isStartTyped = true; });
    connect(m_endTime, &TimeEdit::edited, this, [this] { m_isEndTyped = true; });
}

QWidget* CycleSection::makeStart()
{
    auto* const form = new QWidget;
    auto* const button = makeButton(tr("Record the start"), ButtonKind::main);
    FlowLayout* const row = makeRow(form, button);
    m_startTime = new TimeEdit(zoneOf(desk()), desk().now());
    m_clock = new ChoiceRow(tr("Clock of the start"), {tr("Facility's"), tr("Sterilizer's")}, 0);
    m_startCounter = new QLineEdit;
    m_startCounter->setMaximumWidth(140);
    m_startField = new Field(tr("Start"), m_startTime, tr("now, until you type another"));
    m_startCounterField = new Field(tr("Cycle counter"), m_startCounter, tr("may stay empty"));
    row->addWidget(m_startField);
    row->addWidget(new Field(tr("By the clock"), m_clock));
    row->addWidget(m_startCounterField);
    connect(button, &QPushButton::clicked, this, &CycleSection::start);
    return form;
}

QWidget* CycleSection::makeEnd()
{
    auto* const form = new QWidget;
    auto* const button = makeButton(tr("Record the end"), ButtonKind::main);
    FlowLayout* const row = makeRow(form, button);
    m_endTime = new TimeEdit(zoneOf(desk()), desk().now());
    m_outcome = new ChoiceRow(tr("How the cycle ended"), {tr("Ended"), tr("Aborted")}, 0);
    m_phase = new QComboBox;
    for (const AbortPhase phase :
         {AbortPhase::unknown, AbortPhase::heating, AbortPhase::airRemoval, AbortPhase::exposure,
          AbortPhase::exhaust, AbortPhase::drying, AbortPhase::aeration}) {
        m_phase->addItem(text(say(phase)), static_cast<int>(phase));
    }
    m_endField = new Field(tr("End"), m_endTime, tr("by the clock of its start; now, until you type another"));
    m_phaseField = new Field(tr("When"), m_phase);
    row->addWidget(m_endField);
    row->addWidget(new Field(tr("How"), m_outcome));
    row->addWidget(m_phaseField);
    m_phaseField->hide();
    connect(m_outcome, &ChoiceRow::changed, this,
            [this](int index) { m_phaseField->setVisible(index == 1); });
    connect(button, &QPushButton::clicked, this, &CycleSection::end);
    return form;
}

QWidget* CycleSection::makeAlarm()
{
    auto* const form = new QWidget;
    auto* const button = makeButton(tr("Record the alarm"));
    FlowLayout* const row = makeRow(form, button);
    m_alarm = new QLineEdit;
    m_alarm->setMaximumWidth(180);
    m_alarmField = new Field(tr("Alarm"), m_alarm, tr("its code, as the sterilizer shows it"));
    row->addWidget(m_alarmField);
    connect(button, &QPushButton::clicked, this, &CycleSection::recordAlarm);
    return form;
}

void CycleSection::show(const LoadSheet& sheet)
{
    showFacts(sheet);
    const bool isRunning = sheet.state.started && !sheet.state.ended;
    const bool isReserved = sheet.state.reserved && !sheet.state.started;
    takeNow();
    m_startForm->setVisible(isReserved);
    m_endForm->setVisible(isRunning);
    m_alarmOpen->setVisible(sheet.state.started && m_alarmForm->isHidden());
}

void CycleSection::takeNow()
{
    // The time of the step that comes next is that of the moment, until somebody types another.
    if (!m_isStartTyped) {
        m_startTime->set(desk().now());
    }
    if (!m_isEndTyped) {
        m_endTime->set(desk().now());
    }
}

void CycleSection::showFacts(const LoadSheet& sheet)
{
    const FactBook book(sheet.record.entries);
    const HouseStyle style = desk().style();
    const auto who = [&](const Fact* fact) { return whoText(fact->current(), sheet, style); };
    m_facts->clear();
    m_facts->add(tr("Sterilizer"), sheet.sterilizerName.empty() ? tr("not stated")
                                                                : text(sheet.sterilizerName));
    const CycleSpecification* const specification = plannedProgram(sheet);
    const Fact* const reserved = newestFact<CycleReserved>(book, desk().cycle());
    const QString program =
        specification ? tr("%1, revision %2")
                            .arg(text(specification->program.empty() ? specification->id
                                                                     : specification->program))
                            .arg(specification->revision)
                      : tr("no cycle specification: nothing can be judged by it");
    m_facts->add(tr("Program"), tr("%1; %2", "the program, what it is run for")
                                    .arg(program, text(say(sheet.state.purpose))));
    if (reserved != nullptr) {
        m_facts->add(tr("Reserved"), desk().lot(), who(reserved));
    }
    if (const Fact* const started = newestFact<CycleStarted>(book, desk().cycle())) {
        const auto& act = std::get<CycleStarted>(started->current().act);
        QString value = text(sayTime(act.shown.at, style));
        if (act.clock == ClockSource::sterilizer) {
            value = tr("%1 by its own clock").arg(value);
        }
        if (act.counter) {
            value = tr("%1, counter %2").arg(value).arg(*act.counter);
        }
        m_facts->add(tr("Start"), value, who(started));
    }
    if (const Fact* const ended = newestFact<CycleEnded>(book, desk().cycle())) {
        const auto& act = std::get<CycleEnded>(ended->current().act);
        QString value = text(sayTime(act.shown.at, style));
        if (act.outcome == CycleOutcome::aborted) {
            value = act.abortPhase ? tr("%1, aborted %2").arg(value, text(say(*act.abortPhase)))
                                   : tr("%1, aborted").arg(value);
        }
        m_facts->add(tr("End"), value, who(ended));
    }
    for (const std::uint32_t index : book.about(desk().cycle())) {
        const Fact& fact = book.facts()[index];
        if (const auto* const alarm = std::get_if<AlarmRecorded>(&fact.current().act);
            alarm != nullptr && fact.stands()) {
            m_facts->add(tr("Alarm"), text(alarm->code), who(&fact));
        }
    }
}

bool CycleSection::takeCounter(Field* field, std::optional<std::int64_t>& counter)
{
    const std::string typed = m_startCounter->text().trimmed().toStdString();
    counter = typed.empty() ? std::nullopt : parseDecimal(typed, 0);
    const bool isRight = typed.empty() || (counter && *counter >= 0);
    field->setError(isRight ? QString() : tr("Type the counter as a whole number."));
    if (!isRight) {
        m_startCounter->setFocus();
    }
    return isRight;
}

void CycleSection::start()
{
    takeNow();
    m_startField->setError(m_startTime->whatIsWrong());
    std::optional<std::int64_t> counter;
    if (m_startField->hasError()) {
        m_startTime->setFocus();
        return;
    }
    if (!takeCounter(m_startCounterField, counter)) {
        return;
    }
    const bool isOwnClock = m_clock->chosen() == 1;
    if (isOwnClock && !m_isStartTyped) {
        m_startField->setError(tr("Type the time that the sterilizer's clock shows."));
        m_startTime->setFocus();
        return;
    }
    const JournalTime shown = *m_startTime->value();
    ToRecord act{.act = CycleStarted{isOwnClock ? ClockSource::sterilizer : ClockSource::facility,
                                     shown, counter},
                 .subjects = {desk().cycle()}};
    // By the facility's clock the time that was typed is when it happened; of what the sterilizer
    // shows that is not known.
    if (!isOwnClock) {
        act.happenedAt = shown;
    }
    const auto refused = [this](const QString& why) {
        m_startField->setError(why);
        m_startTime->setFocus();
    };
    desk().record([act](Office&) { return std::vector{act}; }, tr("The start is recorded."), {},
                  refused, isOwnClock ? std::function<void(const QString&)>() : refused);
}

void CycleSection::end()
{
    takeNow();
    m_endField->setError(m_endTime->whatIsWrong());
    if (m_endField->hasError()) {
        m_endTime->setFocus();
        return;
    }
    const bool isFacilityClock = clockOf(*desk().sheet()) == ClockSource::facility;
    if (!isFacilityClock && !m_isEndTyped) {
        m_endField->setError(tr("Type the time that the sterilizer's clock shows, as at its start."));
        m_endTime->setFocus();
        return;
    }
    const JournalTime shown = isFacilityClock
                                  ? endAsTyped(*m_endTime->value(), desk().sheet()->state)
                                  : *m_endTime->value();
    CycleEnded ended{.shown = shown, .outcome = CycleOutcome::ended, .abortPhase = {}, .counter = {}};
    if (m_outcome->chosen() == 1) {
        ended.outcome = CycleOutcome::aborted;
        ended.abortPhase = static_cast<AbortPhase>(m_phase->currentData().toInt());
    }
    ToRecord act{.act = ended, .subjects = {desk().cycle()}};
    if (isFacilityClock) {
        act.happenedAt = shown;
    }
    const auto refused = [this](const QString& why) {
        m_endField->setError(why);
        m_endTime->setFocus();
    };
    desk().record([act](Office&) { return std::vector{act}; }, tr("The end is recorded."), {},
                  refused, isFacilityClock ? refused : std::function<void(const QString&)>());
}

void CycleSection::recordAlarm()
{
    const std::string code = m_alarm->text().trimmed().toStdString();
    if (code.empty()) {
        m_alarmField->setError(tr("Type the code that the sterilizer shows."));
        m_alarm->setFocus();
        return;
    }
    desk().record(
        AlarmRecorded{code}, {}, tr("Alarm %1 is recorded.").arg(text(code)),
        [this] {
            m_alarm->clear();
            m_alarmField->setError({});
            m_alarmForm->hide();
        },
        [this](const QString& why) { m_alarmField->setError(why); });
}

} // namespace loadwarden::ui
