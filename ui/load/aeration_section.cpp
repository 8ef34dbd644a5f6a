#include "ui/load/aeration_section.h"

#include "core/quantities/decimal.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/time_edit.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {

AerationSection::AerationSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Aeration"), parent),
      m_facts(new Facts),
      m_startForm(new QWidget),
      m_celsius(new QLineEdit),
      m_field(nullptr),
      m_runningForm(new QWidget),
      m_when(new TimeEdit(desk.style().zone.value_or(*Zone::find("UTC")), desk.now())),
      m_whenField(new Field(tr("When it began or ended"), m_when,
                            tr("now, until you type another")))
{
    column()->addWidget(m_facts);
    column()->addWidget(m_whenField);
    connect(m_when, &TimeEdit::edited, this, [this] { m_isWhenTyped = true; });
    m_celsius->setMaximumWidth(140);
    m_field = new Field(tr("Temperature of the aerator in °C"), m_celsius);
    auto* const first = new QHBoxLayout(m_startForm);
    first->setContentsMargins(0, 0, 0, 0);
    first->addWidget(m_field);
    auto* const begin = makeButton(tr("Record the start of aeration"), ButtonKind::main);
    first->addWidget(begin, 0, Qt::AlignVCenter);
    first->addStretch();
    connect(begin, &QPushButton::clicked, this, &AerationSection::start);
    connect(m_celsius, &QLineEdit::returnPressed, this, &AerationSection::start);
    auto* const second = new QHBoxLayout(m_runningForm);
    second->setContentsMargins(0, 0, 0, 0);
    auto* const over = makeButton(tr("Record the end of aeration"), ButtonKind::main);
    auto* const interrupted = makeButton(tr("Record an interruption"));
    connect(over, &QPushButton::clicked, this, [this] {
        say(AerationEnded{}, tr("The end of aeration is recorded."));
    });
    connect(interrupted, &QPushButton::clicked, this, [this] {
        say(AerationInterrupted{}, tr("Recorded: aeration was interrupted. It begins anew."));
    });
    second->addWidget(over);
    second->addWidget(interrupted);
    second->addStretch();
    column()->addWidget(m_startForm);
    column()->addWidget(m_runningForm);
}

void AerationSection::show(const LoadSheet& sheet)
{
    const LoadRecord& load = sheet.view().folded.record.load;
    const auto& specification = sheet.view().folded.record.specification;
    const bool isGas = specification && specification->method == Method::ethyleneOxide;
    const bool isAsked =
        std::ranges::any_of(sheet.view().decision.findings, [](const Finding& finding) {
            return ruleOf(finding.key) == RuleId::aeration;
        });
    setVisible(!sheet.view().isTest() && !sheet.view().isImported()
               && (isGas || isAsked || !load.aerationRuns.empty()));
    m_facts->clear();
    const HouseStyle style = desk().style();
    std::vector<std::string> running;
    const FactBook book(sheet.record.entries);
    for (const std::uint32_t index : book.about(desk().cycle())) {
        const Fact& fact = book.facts()[index];
        const AnyAct& act = fact.current().act;
        if (!fact.stands()) {
            continue;
        }
        const QString who = whoText(fact.current(), sheet, style);
        if (const auto* const started = std::get_if<AerationStarted>(&act)) {
            running.emplace_back(fact.origin->subject("ar"));
            m_facts->add(tr("Started"), tr("at %1 °C").arg(text(started->celsius.typed)), who);
        } else if (std::holds_alternative<AerationEnded>(act)) {
            std::erase(running, fact.origin->subject("ar"));
            m_facts->add(tr("Ended"), {}, who);
        } else if (std::holds_alternative<AerationInterrupted>(act)) {
            std::erase(running, fact.origin->subject("ar"));
            m_facts->add(tr("Interrupted"), {}, who);
        }
    }
    m_running = running.empty() ? std::string() : running.front();
    if (!m_isWhenTyped) {
        m_when->set(desk().now());
    }
    m_whenField->setVisible(sheet.state.ended);
    m_startForm->setVisible(sheet.state.ended && m_running.empty());
    m_runningForm->setVisible(!m_running.empty());
    setState(!m_running.empty()              ? tr("running")
             : load.aerationRuns.empty()     ? tr("not begun")
                                             : QString());
}

std::optional<JournalTime> AerationSection::when()
{
    if (!m_isWhenTyped) {
        m_when->set(desk().now());
    }
    m_whenField->setError(m_when->whatIsWrong());
    if (m_whenField->hasError()) {
        m_when->setFocus();
    }
    return m_when->value();
}

void AerationSection::say(AnyAct act, const QString& done)
{
    const auto at = when();
    if (!at || m_running.empty()) {
        return;
    }
    const ToRecord said{
        .act = std::move(act), .subjects = {m_running, desk().cycle()}, .happenedAt = at};
    const auto refused = [this](const QString& why) { refuseTime(why); };
    desk().record([said](Office&) { return std::vector{said}; }, done,
                  [this] { m_isWhenTyped = false; }, refused, refused);
}

void AerationSection::refuseTime(const QString& why)
{
    m_whenField->setError(why);
    m_when->setFocus();
}

void AerationSection::start()
{
    const std::string typed = m_celsius->text().trimmed().replace(u',', u'.').toStdString();
    if (!parseDecimal(typed, 2)) {
        m_field->setError(tr("Type the temperature that the aerator shows, as 55."));
        m_celsius->setFocus();
        return;
    }
    const auto at = when();
    if (!at) {
        return;
    }
    desk().record(
        [celsius = TypedNumber{typed, *parseDecimal(typed, 3)}, at,
         cycle = desk().cycle()](Office& office) {
            return std::vector{ToRecord{.act = AerationStarted{celsius},
                                        .subjects = {office.place().ids.next("ar"), cycle},
                                        .happenedAt = at}};
        },
        tr("The start of aeration is recorded."),
        [this] {
            m_celsius->clear();
            m_isWhenTyped = false;
            m_field->setError({});
        },
        [this](const QString& why) { m_field->setError(why); },
        [this](const QString& why) { refuseTime(why); });
}

} // namespace loadwarden::ui
