#include "ui/records/records_filter.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

namespace loadwarden::ui {
namespace {

constexpr int narrowest = 92; ///< of a field
constexpr int longestText = 200;

/// What a choice stands for: its data is an id, or a SignedWanted.
void fillChoices(QComboBox* box, const QString& any, const std::vector<NamedId>& choices)
{
    const QVariant chosen = box->currentData();
    box->clear();
    box->addItem(any, QString());
    for (const NamedId& each : choices) {
        box->addItem(text(each.name), text(each.id));
    }
    box->setCurrentIndex(std::max(0, box->findData(chosen)));
}

} // namespace

RecordsFilter::RecordsFilter(QWidget* parent)
    : QWidget(parent),
      m_row(new QHBoxLayout(this)),
      m_lot(addLine(tr("&Lot number"), tr("begins with"), m_lotField)),
      m_label(addLine(tr("&Item label"), tr("begins with"), m_labelField)),
      m_sterilizer(addChoice(tr("&Sterilizer"))),
      m_from(addLine(tr("&From"), tr("2031-03-04", "how a date is typed"), m_fromField)),
      m_to(addLine(tr("&Until"), tr("2031-03-04", "how a date is typed"), m_toField)),
      m_signed(addChoice(tr("Si&gned as"))),
      m_person(addChoice(tr("Signed b&y"))),
      m_product(addLine(tr("&Product lot"), tr("used in it"), m_productField))
{
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(space::small + space::hair);
    m_lot->setAccessibleName(tr("Lot control number begins with"));
    m_label->setAccessibleName(tr("Item label begins with"));
    m_from->setAccessibleName(tr("From this facility day on"));
    m_to->setAccessibleName(tr("Until this facility day"));
    m_product->setAccessibleName(tr("Lot of a product that was used in it"));
    const std::pair<QString, SignedWanted> wanted[] = {
        {tr("Anything"), SignedWanted::any},
        {loadwarden::ui::text(say(Verdict::release)), SignedWanted::release},
        {loadwarden::ui::text(say(Verdict::quarantine)), SignedWanted::quarantine},
        {loadwarden::ui::text(say(Verdict::reprocess)), SignedWanted::reprocess},
        {tr("Not signed"), SignedWanted::nothing}};
    for (const auto& [name, value] : wanted) {
        m_signed->addItem(name, static_cast<int>(value));
    }
    offer({});
}

QLineEdit* RecordsFilter::addLine(const QString& label, const QString& example, Field*& field)
{
    auto* const line = new QLineEdit;
    line->setPlaceholderText(example);
    line->setMaxLength(longestText);
    line->setMinimumWidth(narrowest);
    line->setClearButtonEnabled(false);
    line->installEventFilter(this);
    field = new Field(label, line);
    connect(line, &QLineEdit::returnPressed, this, &RecordsFilter::asked);
    connect(line, &QLineEdit::textEdited, field, [field] { field->setError({}); });
    m_row->addWidget(field, 1);
    return line;
}

QComboBox* RecordsFilter::addChoice(const QString& label)
{
    auto* const box = new QComboBox;
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
    box->installEventFilter(this);
    connect(box, &QComboBox::activated, this, &RecordsFilter::asked);
    m_row->addWidget(new Field(label, box), 1);
    return box;
}

void RecordsFilter::offer(const RecordChoices& choices)
{
    fillChoices(m_sterilizer, tr("Any"), choices.sterilizers);
    fillChoices(m_person, tr("Anybody"), choices.people);
}

std::optional<Date> RecordsFilter::dayOf(QLineEdit* line, Field* field, bool& isGood)
{
    const std::string typed = line->text().trimmed().toStdString();
    const std::optional<Date> day = parseDate(typed);
    const bool isWrong = !typed.empty() && !day;
    field->setError(isWrong ? tr("No such day. Type it as 2031-03-04.") : QString());
    isGood = isGood && !isWrong;
    return day;
}

std::optional<RecordQuestion> RecordsFilter::question()
{
    bool isGood = true;
    RecordQuestion asks{.lot = m_lot->text().trimmed().toStdString(),
                        .label = m_label->text().trimmed().toStdString(),
                        .sterilizer = m_sterilizer->currentData().toString().toStdString(),
                        .from = dayOf(m_from, m_fromField, isGood),
                        .to = dayOf(m_to, m_toField, isGood),
                        .signedAs = static_cast<SignedWanted>(m_signed->currentData().toInt()),
                        .person = m_person->currentData().toString().toStdString(),
                        .productLots = {}};
    if (asks.from && asks.to && *asks.to < *asks.from) {
        m_toField->setError(tr("It is before the first day."));
        isGood = false;
    }
    return isGood ? std::optional(asks) : std::nullopt;
}

std::string RecordsFilter::productLot() const
{
    return m_product->text().trimmed().toStdString();
}

void RecordsFilter::sayUnknownLot()
{
    m_productField->setError(tr("No product has a lot of this number."));
}

bool RecordsFilter::isEmpty() const
{
    for (const QLineEdit* const line : {m_lot, m_label, m_from, m_to, m_product}) {
        if (!line->text().trimmed().isEmpty()) {
            return false;
        }
    }
    return m_sterilizer->currentIndex() <= 0 && m_signed->currentIndex() <= 0
           && m_person->currentIndex() <= 0;
}

void RecordsFilter::clear()
{
    for (QLineEdit* const line : {m_lot, m_label, m_from, m_to, m_product}) {
        line->clear();
    }
    for (QComboBox* const box : {m_sterilizer, m_signed, m_person}) {
        box->setCurrentIndex(0);
    }
    for (Field* const field : {m_lotField, m_labelField, m_fromField, m_toField, m_productField}) {
        field->setError({});
    }
}

void RecordsFilter::focusFirst()
{
    m_lot->setFocus();
    m_lot->selectAll();
}

bool RecordsFilter::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const auto* const key = static_cast<QKeyEvent*>(event);
        const bool isLine = qobject_cast<QLineEdit*>(watched) != nullptr;
        if (isLine && key->key() == Qt::Key_Down) {
            emit left();
            return true;
        }
        if (!isLine && (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter)) {
            emit asked();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace loadwarden::ui
