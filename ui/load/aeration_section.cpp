#include "ui/load/aeration_section.h"

#include "core/quantities/decimal.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"

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
      m_runningForm(new QWidget)
{
    column()->addWidget(m_facts);
    m_celsius->setMaximumWidth(140);
    m_field = new Field(tr("Temperature of the aerator in °C"), m_celsius);
    auto* const first = new QHBoxLayout(m_startForm);
    first->setContentsMargins(0, 0, 0, 0);
    first->addWidget(m_field);
    auto* const begin = makeButton(tr("Aeration starts now"), ButtonKind::main);
    first->addWidget(begin, 0, Qt::AlignVCenter);
    first->addStretch();
    connect(begin, &QPushButton::clicked, this, &AerationSection::start);
    connect(m_celsius, &QLineEdit::returnPressed, this, &AerationSection::start);
    auto* const second = new QHBoxLayout(m_runningForm);
    second->setContentsMargins(0, 0, 0, 0);
    auto* const over = makeButton(tr("Aeration is over now"), ButtonKind::main);
    auto* const interrupted = makeButton(tr("It was interrupted"));
    connect(over, &QPushButton::clicked, this, [this] {
        this->desk().record(AerationEnded{}, {m_running}, tr("The end of aeration is recorded."));
    });
    connect(interrupted, &QPushButton::clicked, this, [this] {
        this->desk().record(AerationInterrupted{}, {m_running},
                            tr("Recorded: aeration was interrupted. It begins anew."));
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
    m_running.clear();
    const FactBook book(sheet.record.entries);
    for (const std::uint32_t index : book.about(desk().cycle())) {
        const Fact& fact = book.facts()[index];
        const AnyAct& act = fact.current().act;
        if (!fact.stands()) {
            continue;
        }
        const QString who = whoText(fact.current(), sheet, style);
        if (const auto* const started = std::get_if<AerationStarted>(&act)) {
            m_running = fact.origin->subject("ar");
            m_facts->add(tr("Started"), tr("at %1 °C").arg(text(started->celsius.typed)), who);
        } else if (std::holds_alternative<AerationEnded>(act)) {
            m_running.clear();
            m_facts->add(tr("Ended"), {}, who);
        } else if (std::holds_alternative<AerationInterrupted>(act)) {
            m_running.clear();
            m_facts->add(tr("Interrupted"), {}, who);
        }
    }
    m_startForm->setVisible(sheet.state.ended && m_running.empty());
    m_runningForm->setVisible(!m_running.empty());
    setState(!m_running.empty()              ? tr("running")
             : load.aerationRuns.empty()     ? tr("not begun")
                                             : QString());
}

void AerationSection::start()
{
    const std::string typed = m_celsius->text().trimmed().replace(u',', u'.').toStdString();
    if (!parseDecimal(typed, 2)) {
        m_field->setError(tr("Type the temperature that the aerator shows, as 55."));
        m_celsius->setFocus();
        return;
    }
    desk().record(
        [celsius = TypedNumber{typed, *parseDecimal(typed, 3)},
         cycle = desk().cycle()](Office& office) {
            return std::vector{ToRecord{.act = AerationStarted{celsius},
                                        .subjects = {office.place().ids.next("ar"), cycle}}};
        },
        tr("The start of aeration is recorded."),
        [this] {
            m_celsius->clear();
            m_field->setError({});
        },
        [this](const QString& why) { m_field->setError(why); });
}

} // namespace loadwarden::ui
