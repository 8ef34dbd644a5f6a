#include "ui/load/indicator_section.h"

#include "core/desk/planned_program.h"
#include "core/desk/recorder.h"
#include "core/desk/sheet_part.h"
#include "core/words/say_terms.h"
#include "ui/indicators/reading_panel.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int widthOfActions = 190;

/// Whether somebody can say something of it now that settles more than it is settled.
bool isOpen(const SheetIndicator& indicator)
{
    return indicator.awaitsReading();
}

/// Whether it is on or in a package of which nobody takes hold before it has aerated.
bool isLater(const SheetIndicator& indicator, const LoadSheet& sheet)
{
    const bool isOfItem =
        indicator.where == IndicatorPlace::outside || indicator.where == IndicatorPlace::inside;
    return isOfItem && indicator.readings.empty()
           && isBeforeAerationsEnd(sheet.view().decision.findings);
}

} // namespace

IndicatorSection::IndicatorSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Indicators"), parent),
      m_rows(new QVBoxLayout),
      m_pcdForm(makePcdForm()),
      m_sheetForm(makeSheetForm())
{
    m_rows->setSpacing(0);
    column()->addLayout(m_rows);
    column()->addWidget(m_pcdForm);
    column()->addWidget(m_sheetForm);
}

QWidget* IndicatorSection::makePcdForm()
{
    auto* const form = new QWidget;
    auto* const grid = new QGridLayout(form);
    grid->setContentsMargins(0, space::small, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(0);
    m_mark = new QLineEdit;
    m_chemical = makeCombo();
    m_vial = makeCombo();
    m_chemicalField = new Field(tr("Chemical indicator in it"), m_chemical);
    grid->addWidget(new Field(tr("Mark on a PCD"), m_mark, tr("may stay empty")), 0, 0);
    grid->addWidget(m_chemicalField, 0, 1);
    grid->addWidget(new Field(tr("Biological indicator in it"), m_vial), 0, 2);
    for (int i = 0; i < 3; ++i) {
        grid->setColumnStretch(i, 1);
    }
    auto* const place = makeButton(tr("Put the PCD into the load"));
    connect(place, &QPushButton::clicked, this, &IndicatorSection::placePcd);
    grid->addWidget(place, 1, 0, 1, 3, Qt::AlignLeft);
    return form;
}

QWidget* IndicatorSection::makeSheetForm()
{
    auto* const form = new QWidget;
    auto* const row = new QHBoxLayout(form);
    row->setContentsMargins(0, space::small, 0, 0);
    row->setSpacing(space::medium);
    m_sheetLot = makeCombo();
    row->addWidget(new Field(tr("Test sheet"), m_sheetLot), 1);
    auto* const place = makeButton(tr("Put the sheet in"));
    connect(place, &QPushButton::clicked, this, &IndicatorSection::placeSheet);
    auto* const side = new QVBoxLayout;
    side->addSpacing(space::large);
    side->addWidget(place);
    side->addStretch();
    row->addLayout(side);
    row->addStretch();
    return form;
}

void IndicatorSection::fillChoices(const Choices& choices, Method method)
{
    if (m_filled == choices.lots.size() + 1 && m_filledFor == method) {
        return;
    }
    m_filled = choices.lots.size() + 1;
    m_filledFor = method;
    const QVariant chosen[] = {m_chemical->currentData(), m_vial->currentData()};
    for (QComboBox* const combo : {m_chemical, m_vial, m_sheetLot}) {
        combo->clear();
    }
    m_chemical->addItem(tr("none"), QString());
    m_vial->addItem(tr("none"), QString());
    for (const LotChoice& lot : choices.lots) {
        if (!lot.fits(method)) {
            continue; // it would say nothing in this cycle
        }
        QComboBox* const combo = lot.kind == IndicatorKind::biological   ? m_vial
                                 : lot.response == Response::sheet ? m_sheetLot
                                                                   : m_chemical;
        combo->addItem(lotText(lot), text(lot.lot));
    }
    m_chemical->setCurrentIndex(std::max(0, m_chemical->findData(chosen[0])));
    m_vial->setCurrentIndex(std::max(0, m_vial->findData(chosen[1])));
    if (m_sheetLot->count() == 0) {
        m_sheetLot->addItem(tr("no lot of a test sheet is registered: Settings, Products"), QString());
    }
}

void IndicatorSection::show(const LoadSheet& sheet)
{
    fillChoices(sheet.choices, plannedMethod(sheet));
    if (m_panel != nullptr && sheet.indicator(m_reading) == nullptr) {
        closePanel();
    }
    for (const ReadButton& each : m_readButtons) {
        m_focusAfter = each.button->hasFocus() ? each.id : m_focusAfter;
    }
    const bool panelStays = m_panel != nullptr;
    if (panelStays) {
        m_rows->removeWidget(m_panel); // it keeps what has the keyboard in it
    }
    clearLayout(m_rows);
    m_readButtons.clear();
    int open = 0;
    for (const SheetIndicator& indicator : sheet.indicators) {
        addRow(indicator, sheet);
        open += isOpen(indicator) && sheet.state.ended && !isLater(indicator, sheet)
                        && indicator.where != IndicatorPlace::inside
                    ? 1
                    : 0;
        if (panelStays && indicator.id == m_reading) {
            m_rows->addWidget(m_panel);
            m_panel->show();
        }
    }
    if (sheet.indicators.empty()) {
        m_rows->addWidget(makeMuted(
            sheet.view().isTest()
                ? tr("No indicator is in this test yet.")
                : tr("No indicator is in this load yet: put one into a process challenge device "
                     "(PCD) below, and into and onto the packages as their directions say.")));
    }
    const bool canPlace = !sheet.state.ended && !sheet.view().isImported();
    m_pcdForm->setVisible(canPlace && sheet.state.purpose != Purpose::bowieDick
                          && sheet.state.purpose != Purpose::leak
                          && sheet.state.purpose != Purpose::warmUp);
    m_sheetForm->setVisible(canPlace && sheet.state.purpose == Purpose::bowieDick
                            && std::ranges::none_of(sheet.indicators, [](const auto& each) {
                                   return !each.isStruck;
                               }));
    setState(!sheet.state.ended ? tr("read once the cycle has ended")
             : open == 0        ? tr("nothing waits to be read")
                                : tr("to be read: %1").arg(open));
    if (!m_focusAfter.empty() && !panelStays) {
        const std::string next = std::exchange(m_focusAfter, {});
        for (const ReadButton& each : m_readButtons) {
            if (each.id == next) {
                each.button->setFocus(Qt::OtherFocusReason);
            }
        }
    }
}

void IndicatorSection::addRow(const SheetIndicator& indicator, const LoadSheet& sheet)
{
    auto* const row = new QWidget;
    auto* const columns = new QHBoxLayout(row);
    columns->setContentsMargins(0, space::hair, 0, space::hair);
    columns->setSpacing(space::medium);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    auto* const where = makeLabel(placeText(indicator), Type::strong);
    words->addWidget(where);
    words->addWidget(makeMuted(productText(indicator)));
    columns->addLayout(words, 3);
    QStringList said;
    for (const SheetReading& reading : indicator.readings) {
        if (!reading.isStruck) {
            said << tr("%1 (%2, %3)", "what was seen, by whom, when")
                        .arg(capital(text(say(reading.seen))), text(reading.by),
                             shortTime(reading.at, sheet, desk().style()));
        }
    }
    if (indicator.isStruck) {
        said << tr("Not in the load: struck or taken out");
    } else if (indicator.isLost) {
        said << tr("Lost");
    } else if (said.isEmpty()) {
        said << (indicator.isVial ? tr("Read on the page Biologicals")
                 : sheet.state.ended && isLater(indicator, sheet)
                     ? tr("Read at unloading, once it has aerated")
                 : indicator.where == IndicatorPlace::inside
                     ? tr("Not read yet: read where the package is opened")
                     : tr("Not read yet"));
    }
    columns->addWidget(makeLabel(said.join(u'\n')), 4);
    const QString name = placeText(indicator);
    auto* const actions = new QWidget;
    actions->setFixedWidth(widthOfActions);
    auto* const buttons = new QHBoxLayout(actions);
    buttons->setContentsMargins(0, 0, 0, 0);
    buttons->setSpacing(0);
    buttons->addStretch();
    columns->addWidget(actions);
    if (indicator.isVial) {
        auto* const go = makeButton(tr("Biologicals"), ButtonKind::quiet);
        go->setAccessibleName(tr("Open Biologicals for %1").arg(name));
        connect(go, &QPushButton::clicked, this, &IndicatorSection::wantsBiologicals);
        buttons->addWidget(go);
    } else if (sheet.state.ended && isOpen(indicator) && !isLater(indicator, sheet)) {
        auto* const read = makeButton(indicator.readings.empty() ? tr("Read") : tr("Read again"));
        read->setAccessibleName(tr("Read %1").arg(name));
        connect(read, &QPushButton::clicked, this, [this, id = indicator.id] { openPanel(id); });
        buttons->addWidget(read);
        m_readButtons.push_back({indicator.id, indicator.holder, read});
        if (indicator.readings.empty()) {
            auto* const lost = makeButton(tr("Lost"), ButtonKind::quiet);
            lost->setAccessibleName(tr("%1 is lost").arg(name));
            connect(lost, &QPushButton::clicked, this, [this, indicator, lost] {
                // Only a second person takes it back: asked once.
                if (lost->property("asked").toBool()) {
                    lose(indicator);
                    return;
                }
                lost->setProperty("asked", true);
                lost->setText(tr("Really lost?"));
            });
            buttons->addWidget(lost);
        }
    }
    m_rows->addWidget(row);
}

ReadingGuide IndicatorSection::guideOf(const SheetIndicator& indicator)
{
    const HouseStyle style = desk().style();
    ReadingGuide guide{.type = 0, .directions = {}, .today = {}};
    if (style.zone) {
        guide.today = style.zone->dateOf(desk().now());
    }
    const auto& lots = desk().sheet()->choices.lots;
    const auto lot = std::ranges::find(lots, indicator.product, &LotChoice::product);
    if (lot != lots.end()) {
        guide.type = lot->type;
        guide.directions = lot->directions;
    }
    return guide;
}

void IndicatorSection::openPanel(const std::string& id)
{
    closePanel();
    const SheetIndicator* const indicator = desk().sheet()->indicator(id);
    if (indicator == nullptr) {
        return;
    }
    m_reading = id;
    m_panel = new ReadingPanel(desk().workstation().look, placeText(*indicator),
                               productText(*indicator),
                               indicator->response, guideOf(*indicator));
    connect(m_panel, &ReadingPanel::answered, this,
            [this, id](Seen seen, const QString& words) { read(id, seen, words); });
    connect(m_panel, &ReadingPanel::left, this, [this, id] {
        closePanel();
        m_focusAfter = id;
        show(*desk().sheet());
    });
    show(*desk().sheet());
    settleLayouts(m_panel); // else it is seen for a moment at the height of another width
    m_panel->focusFirst();
}

void IndicatorSection::closePanel()
{
    if (m_panel != nullptr) {
        m_panel->hide();
        m_panel->deleteLater();
        m_panel = nullptr;
    }
    m_reading.clear();
}

void IndicatorSection::read(const std::string& id, Seen seen, const QString& words)
{
    const SheetIndicator* const indicator = desk().sheet()->indicator(id);
    const QString where = indicator == nullptr ? QString() : placeText(*indicator);
    const Person& person = desk().workstation().session.person();
    if (indicator != nullptr && indicator->unclearTo() == person.name) {
        emit desk().says(tr("%1 was unclear to you.").arg(where),
                         tr("Somebody else reads it: change the person, or scan a badge."));
        closePanel();
        show(*desk().sheet());
        return;
    }
    // What is read next has the keyboard then.
    std::string next;
    bool isBehind = false;
    for (const SheetIndicator& each : desk().sheet()->indicators) {
        if (isBehind && isOpen(each) && next.empty()) {
            next = each.id;
        }
        isBehind = isBehind || each.id == id;
    }
    desk().record(
        ChemicalRead{seen}, {id}, tr("%1: %2 is recorded.").arg(where, words),
        [this, next] {
            closePanel();
            m_focusAfter = next;
        },
        [this, id](const QString& why) {
            if (!why.isEmpty()) {
                emit desk().says(why, {});
            }
            openPanel(id);
        });
}

void IndicatorSection::lose(const SheetIndicator& indicator)
{
    desk().record(ChemicalLost{}, {indicator.id},
                  tr("%1 is recorded as lost.").arg(placeText(indicator)));
}

void IndicatorSection::placePcd()
{
    const Choices& choices = desk().sheet()->choices;
    const LotChoice* const chemical =
        choices.lot(m_chemical->currentData().toString().toStdString());
    const LotChoice* const vial = choices.lot(m_vial->currentData().toString().toStdString());
    if (chemical == nullptr && vial == nullptr) {
        m_chemicalField->setError(tr("Choose the indicator that is in it, chemical or biological."));
        m_chemical->setFocus();
        return;
    }
    m_chemicalField->setError({});
    PcdPlaced placed{.mark = m_mark->text().trimmed().toStdString(), .indicators = {}, .vials = {}};
    if (chemical != nullptr) {
        placed.indicators.push_back({{}, chemical->product, chemical->lot, {}});
    }
    if (vial != nullptr) {
        placed.vials.push_back({{}, vial->product, vial->lot, {}});
    }
    desk().record(
        [placed, cycle = desk().cycle()](Office& office) {
            IdSource& ids = office.place().ids;
            PcdPlaced made = placed;
            std::vector<std::string> subjects{ids.next("pd"), cycle};
            for (PlacedIndicator& each : made.indicators) {
                each.id = ids.next("ci");
                subjects.push_back(each.id);
            }
            for (PlacedIndicator& each : made.vials) {
                each.id = ids.next("bv");
                subjects.push_back(each.id);
            }
            return std::vector{ToRecord{.act = made, .subjects = std::move(subjects)}};
        },
        tr("The PCD is in the load."), [this] { m_mark->clear(); },
        [this](const QString& why) { m_chemicalField->setError(why); });
}

void IndicatorSection::placeSheet()
{
    const LotChoice* const lot =
        desk().sheet()->choices.lot(m_sheetLot->currentData().toString().toStdString());
    if (lot == nullptr) {
        return;
    }
    desk().record(
        [placed = SheetPlaced{lot->product, lot->lot}, cycle = desk().cycle()](Office& office) {
            return std::vector{
                ToRecord{.act = placed, .subjects = {office.place().ids.next("ci"), cycle}}};
        },
        tr("The sheet is in the test."));
}

void IndicatorSection::goTo(const QString& subject)
{
    for (const ReadButton& each : m_readButtons) {
        if (subject.isEmpty() || text(each.id) == subject || text(each.holder) == subject) {
            each.button->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
    SheetSection::goTo(subject);
}

} // namespace loadwarden::ui
