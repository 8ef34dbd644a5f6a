#include "ui/load/contents_section.h"

#include "core/quantities/person.h"
#include "core/words/say_terms.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/verdict_badge.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int mostInside = 6;

void fillLots(QComboBox* combo, const Choices& choices, const QString& none)
{
    combo->addItem(none, QString());
    for (const LotChoice& lot : choices.lots) {
        if (lot.kind == IndicatorKind::chemical && lot.response != Response::sheet) {
            combo->addItem(lotText(lot), text(lot.lot));
        }
    }
}

} // namespace

ContentsSection::ContentsSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Contents"), parent), m_rows(new QVBoxLayout), m_form(makeForm())
{
    m_rows->setSpacing(0);
    column()->addLayout(m_rows);
    column()->addWidget(m_form);
}

QWidget* ContentsSection::makeForm()
{
    auto* const form = new QWidget;
    auto* const grid = new QGridLayout(form);
    grid->setContentsMargins(0, space::small, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(0);
    m_label = new QLineEdit;
    m_labelField = new Field(tr("Label of an item"), m_label, tr("scan it, or type it and press Enter"));
    m_implant = new ChoiceRow(tr("Implant"), {tr("No implant"), tr("Implant"), tr("Not known")}, 2);
    m_packaging = new QComboBox;
    m_expires = new QLineEdit;
    m_expires->setMaximumWidth(160);
    m_expiresField = new Field(tr("Packaging expires"), m_expires, tr("as 2031-03-04; may stay empty"));
    m_device = new QComboBox;
    m_devices = makeMuted({});
    m_noDevices = makeButton(tr("None of them"), ButtonKind::quiet);
    m_outside = new QComboBox;
    m_inside = new QComboBox;
    m_insideCount = new QComboBox;
    for (int i = 1; i <= mostInside; ++i) {
        m_insideCount->addItem(QString::number(i), i);
    }
    grid->addWidget(m_labelField, 0, 0);
    auto* const implant = new Field(tr("Implant"), m_implant,
                                    tr("what is not known is held as an implant"));
    grid->addWidget(implant, 0, 1, 1, 2);
    grid->addWidget(new Field(tr("Packaging"), m_packaging), 1, 0);
    grid->addWidget(new Field(tr("Devices inside"), m_device, tr("each that is chosen is added")), 1,
                    1);
    grid->addWidget(m_expiresField, 1, 2);
    grid->addWidget(new Field(tr("Indicator outside"), m_outside), 2, 0);
    grid->addWidget(new Field(tr("Indicators inside"), m_inside), 2, 1);
    grid->addWidget(new Field(tr("How many inside"), m_insideCount), 2, 2);
    for (int i = 0; i < 3; ++i) {
        grid->setColumnStretch(i, 1);
    }
    connect(m_label, &QLineEdit::returnPressed, this, [this] { addLabel(m_label->text()); });
    auto* const devices = new QHBoxLayout;
    devices->addWidget(m_devices, 1);
    devices->addWidget(m_noDevices);
    grid->addLayout(devices, 3, 1, 1, 2);
    connect(m_noDevices, &QPushButton::clicked, this, [this] {
        m_deviceIds.clear();
        showDevices();
    });
    connect(m_device, &QComboBox::currentIndexChanged, this, [this](int index) {
        const std::string id = m_device->itemData(index).toString().toStdString();
        if (!id.empty() && std::ranges::find(m_deviceIds, id) == m_deviceIds.end()) {
            m_deviceIds.push_back(id);
        }
        showDevices();
    });
    auto* const add = makeButton(tr("Add the item"), ButtonKind::main);
    connect(add, &QPushButton::clicked, this, [this] { addLabel(m_label->text()); });
    grid->addWidget(add, 3, 0, Qt::AlignLeft);
    return form;
}

void ContentsSection::fillChoices(const Choices& choices)
{
    const std::size_t count =
        1 + choices.packagings.size() + choices.lots.size() + choices.devices.size();
    if (m_filled == count) {
        return;
    }
    m_filled = count;
    const QVariant chosen[] = {m_packaging->currentData(), m_outside->currentData(),
                               m_inside->currentData()};
    for (QComboBox* const combo : {m_packaging, m_outside, m_inside, m_device}) {
        combo->clear();
    }
    m_packaging->addItem(tr("not stated"), QString());
    for (const Choice& packaging : choices.packagings) {
        m_packaging->addItem(text(packaging.name), text(packaging.id));
    }
    fillLots(m_outside, choices, tr("none recorded"));
    fillLots(m_inside, choices, tr("none recorded"));
    m_device->addItem(tr("none chosen"), QString());
    for (const Choice& device : choices.devices) {
        m_device->addItem(text(device.name), text(device.id));
    }
    m_packaging->setCurrentIndex(std::max(0, m_packaging->findData(chosen[0])));
    m_outside->setCurrentIndex(std::max(0, m_outside->findData(chosen[1])));
    m_inside->setCurrentIndex(std::max(0, m_inside->findData(chosen[2])));
    showDevices();
}

void ContentsSection::showDevices()
{
    QStringList names;
    for (const std::string& id : m_deviceIds) {
        names << m_device->itemText(m_device->findData(text(id)));
    }
    m_devices->setText(names.isEmpty() ? QString()
                                       : tr("Inside: %1").arg(names.join(QStringLiteral(", "))));
    m_noDevices->setVisible(!names.isEmpty());
    m_noDevices->setAccessibleName(tr("No devices inside"));
}

void ContentsSection::show(const LoadSheet& sheet)
{
    fillChoices(sheet.choices);
    showItems(sheet);
    m_form->setVisible(!sheet.state.ended);
    const auto count = sheet.items.size();
    setState(count == 0 ? tr("nothing yet")
             : sheet.state.started && !sheet.state.ended
                 ? tr("items: %1; what is added now is recorded late").arg(count)
                 : tr("items: %1").arg(count));
}

void ContentsSection::showItems(const LoadSheet& sheet)
{
    if (m_rows->parentWidget() != nullptr && !m_removing.empty()) {
        for (const auto* const line : findChildren<QLineEdit*>()) {
            if (line->hasFocus() && line->objectName() == QLatin1String("why")) {
                return; // somebody is writing there
            }
        }
    }
    clearLayout(m_rows);
    if (sheet.items.empty()) {
        m_rows->addWidget(makeMuted(
            sheet.state.started
                ? tr("No item was recorded before the cycle started.")
                : tr("Scan the label of each item as it goes onto the cart. Packaging and "
                     "indicators stay chosen for the next items; implant and devices are asked "
                     "for anew each time.")));
    }
    for (const SheetItem& item : sheet.items) {
        m_rows->addWidget(makeRow(item));
    }
}

QWidget* ContentsSection::makeRow(const SheetItem& item)
{
    auto* const row = new QWidget;
    auto* const columns = new QHBoxLayout(row);
    columns->setContentsMargins(0, space::hair, 0, space::hair);
    columns->setSpacing(space::medium);
    columns->addWidget(makeLabel(text(item.label), Type::strong));
    QStringList about{text(say(item.implant))};
    about << (item.packaging.empty() ? tr("packaging not stated") : text(item.packaging));
    for (const std::string& device : item.devices) {
        about << text(device);
    }
    columns->addWidget(makeMuted(about.join(QStringLiteral(", "))), 1);
    if (item.verdict) {
        auto* const badge = new VerdictBadge(desk().workstation().look, VerdictBadge::Size::row);
        const auto& signedAs = desk().sheet()->view().signedAs;
        const Verdict verdict = signedAs ? std::max(*signedAs, *item.verdict) : *item.verdict;
        if (verdict == Verdict::release && !signedAs) {
            badge->show(glyphOf(verdict), toneOf(verdict), tr("Release, not signed"));
        } else {
            badge->show(verdict);
        }
        columns->addWidget(badge);
        return row;
    }
    auto* const why = new QLineEdit;
    why->setObjectName(QStringLiteral("why"));
    why->setPlaceholderText(tr("why it is taken out"));
    why->setAccessibleName(tr("Why %1 is taken out").arg(text(item.label)));
    if (m_removing != item.id) {
        why->hide();
    }
    auto* const button = makeButton(tr("Take out"), ButtonKind::quiet);
    button->setAccessibleName(tr("Take out %1").arg(text(item.label)));
    const auto takeOut = [this, item, why] {
        if (why->isHidden()) {
            m_removing = item.id;
            why->show();
            why->setFocus();
            return;
        }
        remove(item, why->text().trimmed());
    };
    connect(button, &QPushButton::clicked, this, takeOut);
    connect(why, &QLineEdit::returnPressed, this, takeOut);
    columns->addWidget(why);
    columns->addWidget(button);
    return row;
}

void ContentsSection::remove(const SheetItem& item, const QString& why)
{
    if (why.isEmpty()) {
        emit desk().says(tr("Say why %1 is taken out.").arg(text(item.label)), {});
        return;
    }
    m_removing.clear();
    desk().record(ItemRemoved{why.toStdString()}, {item.id},
                  tr("%1 is taken out.").arg(text(item.label)));
}

void ContentsSection::addLabel(const QString& label)
{
    const std::string typed = label.trimmed().toStdString();
    if (typed.empty()) {
        m_labelField->setError(tr("Scan or type the label."));
        m_label->setFocus();
        return;
    }
    const auto& items = desk().sheet()->items;
    if (std::ranges::any_of(items, [&](const SheetItem& each) {
            return isSamePerson(each.label, typed);
        })) {
        m_labelField->setError(tr("%1 is in this load already.").arg(label.trimmed()));
        m_label->selectAll();
        m_label->setFocus();
        return;
    }
    ItemAdded item{.label = typed,
                   .packaging = m_packaging->currentData().toString().toStdString(),
                   .devices = {},
                   .external = {},
                   .internals = {}};
    item.implant = m_implant->chosen() == 0   ? Implant::no
                   : m_implant->chosen() == 1 ? Implant::yes
                                              : Implant::unknown;
    const std::string expires = m_expires->text().trimmed().toStdString();
    if (!expires.empty()) {
        item.packagingExpires = parseDate(expires);
        if (!item.packagingExpires) {
            m_expiresField->setError(tr("Type the date as 2031-03-04, or leave it empty."));
            m_expires->setFocus();
            return;
        }
    }
    m_expiresField->setError({});
    item.devices = m_deviceIds;
    const Choices& choices = desk().sheet()->choices;
    const LotChoice* const outside = choices.lot(m_outside->currentData().toString().toStdString());
    const LotChoice* const inside = choices.lot(m_inside->currentData().toString().toStdString());
    const PlacedIndicator outer = outside == nullptr
                                      ? PlacedIndicator{}
                                      : PlacedIndicator{{}, outside->product, outside->lot, {}};
    const PlacedIndicator inner = inside == nullptr
                                      ? PlacedIndicator{}
                                      : PlacedIndicator{{}, inside->product, inside->lot, {}};
    const int count = inside == nullptr ? 0 : m_insideCount->currentData().toInt();
    desk().record(
        [item, outer, inner, count, cycle = desk().cycle()](Office& office) {
            IdSource& ids = office.place().ids;
            ItemAdded made = item;
            std::vector<std::string> subjects{ids.next("it"), cycle};
            if (!outer.product.empty()) {
                made.external = outer;
                made.external->id = ids.next("ci");
                subjects.push_back(made.external->id);
            }
            for (int i = 0; i < count; ++i) {
                made.internals.push_back(inner);
                made.internals.back().id = ids.next("ci");
                subjects.push_back(made.internals.back().id);
            }
            return std::vector{ToRecord{.act = made, .subjects = std::move(subjects)}};
        },
        tr("%1 is in the load: %2.", "a label, implant or not")
            .arg(label.trimmed(), text(say(item.implant))),
        [this, label] {
            // What another item must not take over by mistake is asked for anew.
            m_implant->choose(2);
            m_deviceIds.clear();
            m_device->setCurrentIndex(0);
            m_expires->clear();
            showDevices();
            if (m_label->text() == label) {
                m_label->clear();
            }
            m_labelField->setError({});
            m_label->setFocus();
        },
        [this, label](const QString& why) {
            m_label->setText(label);
            m_labelField->setError(why);
            m_label->setFocus();
        });
}

void ContentsSection::goTo(const QString& subject)
{
    if (m_form->isVisibleTo(this)) {
        m_label->setFocus(Qt::OtherFocusReason);
        return;
    }
    SheetSection::goTo(subject);
}

} // namespace loadwarden::ui
