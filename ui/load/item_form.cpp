#include "ui/load/item_form.h"

#include "ui/load/load_text.h"
#include "ui/load/peroxide_form.h"
#include "ui/load/sheet_section.h"
#include "ui/look/text.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int mostInside = 6;
constexpr int leastLabel = 260;

/// Those that answer in a cycle of that method.
void fillLots(QComboBox* combo, const Choices& choices, Method method, const QString& none)
{
    combo->addItem(none, QString());
    for (const LotChoice& lot : choices.lots) {
        if (lot.kind == IndicatorKind::chemical && lot.response != Response::sheet
            && lot.fits(method)) {
            combo->addItem(lotText(lot), text(lot.lot));
        }
    }
}

/// Of the lot that is chosen; without a product where none is.
PlacedIndicator placedOf(const QComboBox* combo, const Choices& choices)
{
    const LotChoice* const lot = choices.lot(combo->currentData().toString().toStdString());
    return lot == nullptr ? PlacedIndicator{} : PlacedIndicator{{}, lot->product, lot->lot, {}};
}

} // namespace

ItemForm::ItemForm(QWidget* parent)
    : QWidget(parent),
      m_label(new QLineEdit),
      m_labelField(
          new Field(tr("Label of an item"), m_label, tr("scan it, or type it and press Enter"))),
      m_implant(
          new ChoiceRow(tr("Implant"), {tr("No implant"), tr("Implant"), tr("Not known")}, 2)),
      m_packaging(makeCombo()),
      m_expires(new QLineEdit),
      m_expiresField(
          new Field(tr("Packaging expires"), m_expires, tr("as 2031-03-04; may stay empty"))),
      m_device(makeCombo()),
      m_devices(makeMuted({})),
      m_noDevices(makeButton(tr("None of them"), ButtonKind::quiet)),
      m_misfit(makeLabel({}, Type::strong)),
      m_outside(makeCombo()),
      m_inside(makeCombo()),
      m_insideCount(makeCombo()),
      m_insidePlace(new QLineEdit),
      m_seenThrough(new QCheckBox(tr("Inside one seen through its pouch"))),
      m_peroxide(new PeroxideForm)
{
    m_expires->setMaximumWidth(160);
    for (int i = 1; i <= mostInside; ++i) {
        m_insideCount->addItem(QString::number(i), i);
    }
    m_insideCount->setMinimumContentsLength(2);
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, space::small, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(0);
    for (int i = 0; i < 3; ++i) {
        grid->setColumnStretch(i, 1);
    }
    makeFields(grid);
    connect(m_label, &QLineEdit::returnPressed, this, [this] { emit wanted(label()); });
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
}

void ItemForm::makeFields(QGridLayout* grid)
{
    auto* const first = new FlowLayout;
    first->setSpacing(space::medium);
    m_labelField->setMinimumWidth(leastLabel);
    first->addWidget(m_labelField);
    first->addWidget(
        new Field(tr("Implant"), m_implant, tr("what is not known is held as an implant")));
    grid->addLayout(first, 0, 0, 1, 3);
    grid->addWidget(new Field(tr("Packaging"), m_packaging), 1, 0);
    grid->addWidget(new Field(tr("Devices inside"), m_device, tr("each that is chosen is added")),
                    1, 1);
    grid->addWidget(m_expiresField, 1, 2);
    grid->addWidget(new Field(tr("Indicator outside"), m_outside), 2, 0);
    grid->addWidget(new Field(tr("Indicators inside"), m_inside), 2, 1);
    grid->addWidget(new Field(tr("How many inside"), m_insideCount), 2, 2);
    grid->addWidget(new Field(tr("Where inside"), m_insidePlace, tr("may stay empty")), 3, 0);
    grid->addWidget(m_seenThrough, 4, 0, 1, 3);
    grid->addWidget(m_peroxide, 5, 0, 1, 3);
    auto* const devices = new QHBoxLayout;
    devices->addWidget(m_devices, 1);
    devices->addWidget(m_noDevices);
    grid->addLayout(devices, 3, 1, 1, 2);
    auto* const add = makeButton(tr("Add the item"), ButtonKind::main);
    connect(add, &QPushButton::clicked, this, [this] { emit wanted(label()); });
    setStyleProperty(m_misfit, "tone", "bad");
    m_misfit->hide();
    grid->addWidget(m_misfit, 6, 0, 1, 3);
    grid->addWidget(add, 7, 0, 1, 3, Qt::AlignLeft);
}

void ItemForm::offer(const Choices& choices, Method method)
{
    m_peroxide->setVisible(method == Method::hydrogenPeroxide);
    const std::size_t count =
        1 + choices.packagings.size() + choices.lots.size() + choices.devices.size();
    if (m_filled == count && m_filledFor == method) {
        return;
    }
    m_filled = count;
    m_filledFor = method;
    const QVariant chosen[] = {m_packaging->currentData(), m_outside->currentData(),
                               m_inside->currentData()};
    for (QComboBox* const combo : {m_packaging, m_outside, m_inside, m_device}) {
        combo->clear();
    }
    m_packaging->addItem(tr("not stated"), QString());
    for (const PackagingChoice& packaging : choices.packagings) {
        const bool fits = method == Method::unknown || packaging.methods.contains(method);
        m_packaging->addItem(fits ? text(packaging.name)
                                  : tr("%1: not said to be for this method").arg(text(packaging.name)),
                             text(packaging.id));
    }
    fillLots(m_outside, choices, method, tr("none recorded"));
    fillLots(m_inside, choices, method, tr("none recorded"));
    m_device->addItem(tr("none chosen"), QString());
    for (const DeviceChoice& device : choices.devices) {
        m_device->addItem(text(device.device.name), text(device.id));
    }
    m_packaging->setCurrentIndex(std::max(0, m_packaging->findData(chosen[0])));
    m_outside->setCurrentIndex(std::max(0, m_outside->findData(chosen[1])));
    m_inside->setCurrentIndex(std::max(0, m_inside->findData(chosen[2])));
    showDevices();
}

void ItemForm::showDevices()
{
    QStringList names;
    for (const std::string& id : m_deviceIds) {
        names << m_device->itemText(m_device->findData(text(id)));
    }
    m_devices->setText(names.isEmpty() ? QString()
                                       : tr("Inside: %1").arg(names.join(QStringLiteral(", "))));
    m_noDevices->setVisible(!names.isEmpty());
    m_noDevices->setAccessibleName(tr("No devices inside"));
    emit devicesChanged();
}

void ItemForm::setMisfit(const QString& says)
{
    m_misfit->setText(says);
    m_misfit->setVisible(!says.isEmpty());
}

bool ItemForm::takeExpiry(ItemAdded& item)
{
    const std::string typed = m_expires->text().trimmed().toStdString();
    if (!typed.empty()) {
        item.packagingExpires = parseDate(typed);
        if (!item.packagingExpires) {
            m_expiresField->setError(tr("Type the date as 2031-03-04, or leave it empty."));
            m_expires->setFocus();
            return false;
        }
    }
    m_expiresField->setError({});
    return true;
}

void ItemForm::takeIndicators(ItemAdded& item, const Choices& choices) const
{
    if (const PlacedIndicator outer = placedOf(m_outside, choices); !outer.product.empty()) {
        item.external = outer;
    }
    PlacedIndicator inner = placedOf(m_inside, choices);
    if (inner.product.empty()) {
        return;
    }
    inner.place = m_insidePlace->text().trimmed().toStdString();
    item.internals.assign(static_cast<std::size_t>(m_insideCount->currentData().toInt()), inner);
}

std::optional<ItemAdded> ItemForm::item(const QString& label, const Choices& choices)
{
    ItemAdded item{.label = label.trimmed().toStdString(),
                   .packaging = m_packaging->currentData().toString().toStdString(),
                   .devices = m_deviceIds,
                   .external = {},
                   .internals = {}};
    if (item.label.empty()) {
        refused(label, tr("Scan or type the label."));
        return std::nullopt;
    }
    item.implant = m_implant->chosen() == 0   ? Implant::no
                   : m_implant->chosen() == 1 ? Implant::yes
                                              : Implant::unknown;
    if (!takeExpiry(item)) {
        return std::nullopt;
    }
    item.internalVisible = m_seenThrough->isChecked();
    if (!m_peroxide->isHidden()) {
        item.peroxide = m_peroxide->value();
    }
    takeIndicators(item, choices);
    return item;
}

QString ItemForm::label() const
{
    return m_label->text();
}

void ItemForm::accepted(const QString& label)
{
    m_implant->choose(2);
    m_deviceIds.clear();
    m_device->setCurrentIndex(0);
    m_expires->clear();
    m_peroxide->clear();
    m_seenThrough->setChecked(false); // it spares the indicator outside
    showDevices();
    if (m_label->text() == label) {
        m_label->clear();
    }
    m_labelField->setError({});
    m_label->setFocus();
}

void ItemForm::refused(const QString& label, const QString& why)
{
    m_label->setText(label);
    m_labelField->setError(why);
    m_label->selectAll();
    m_label->setFocus();
}

void ItemForm::focusLabel()
{
    m_label->setFocus(Qt::OtherFocusReason);
}

} // namespace loadwarden::ui
