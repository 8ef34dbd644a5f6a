#include "ui/settings/workstation_page.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/settings/file_edit.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/local_settings.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QGridLayout>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include <memory>
#include <utility>
#include <vector>

namespace loadwarden::ui {
namespace {

template <class Value>
struct Choice {
    QString name;
    Value value;
};

/// A row of buttons of which one is chosen.
template <class Value, class Chosen>
void addChoices(QGridLayout* grid, const QString& label, const QString& says,
                const std::vector<Choice<Value>>& choices, Value now, Chosen chosen)
{
    const int row = grid->rowCount();
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::hair);
    words->addWidget(makeLabel(label, Type::strong));
    words->addWidget(makeMuted(says));
    words->addStretch();
    grid->addLayout(words, row, 0);
    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(space::small);
    // Not a QButtonGroup, of which Tab reaches only the button that is chosen.
    const auto group = std::make_shared<std::vector<QPushButton*>>();
    for (const auto& choice : choices) {
        auto* const button = makeButton(choice.name, ButtonKind::choice);
        button->setChecked(choice.value == now);
        button->setAccessibleName(
            QCoreApplication::translate("loadwarden::ui::WorkstationPage", "%1: %2")
                .arg(label, choice.name));
        group->push_back(button);
        QObject::connect(button, &QPushButton::clicked, button,
                         [chosen, group, button, value = choice.value] {
                             for (QPushButton* const each : *group) {
                                 each->setChecked(each == button);
                             }
                             chosen(value);
                         });
        buttons->addWidget(button);
    }
    buttons->addStretch();
    grid->addLayout(buttons, row, 1);
    grid->addWidget(makeRule(), row + 1, 0, 1, 2);
}

} // namespace

WorkstationPage::WorkstationPage(Workstation& workstation) : m_settings(workstation.settings)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto* const scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    column->addWidget(scroll);
    auto* const middle = new QWidget;
    scroll->setWidget(middle);
    auto* const page = new QVBoxLayout(middle);
    page->setContentsMargins(space::page, space::large, space::page, space::medium);
    page->setSpacing(space::medium);
    page->addWidget(makeLabel(tr("This workstation"), Type::title));
    page->addWidget(makeMuted(tr("Kept on this computer, for whoever works here; nothing of it "
                                 "goes into the journal.")));
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(space::page);
    grid->setVerticalSpacing(space::medium);
    grid->setColumnStretch(0, 2);
    grid->setColumnStretch(1, 3);
    addChoices<Theme>(grid, tr("Light or dark"), tr("Both are checked for contrast."),
                      {{tr("Light"), Theme::light}, {tr("Dark"), Theme::dark}}, m_settings.theme(),
                      [this](Theme theme) { m_settings.setTheme(theme); });
    addChoices<TextSize>(grid, tr("Size of text"), tr("For everything on the screen."),
                         {{tr("Normal"), TextSize::normal},
                          {tr("Large"), TextSize::large},
                          {tr("Largest"), TextSize::largest}},
                         m_settings.textSize(),
                         [this](TextSize size) { m_settings.setTextSize(size); });
    addChoices<Unit>(
        grid, tr("Temperatures"), tr("What was typed before keeps the unit in which it was typed."),
        {{tr("°C"), Unit::celsius}, {tr("°F"), Unit::fahrenheit}}, m_settings.temperatureUnit(),
        [this](Unit unit) { m_settings.setTemperatureUnit(unit); });
    addChoices<Unit>(grid, tr("Pressures"), tr("As your printouts show them."),
                     {{tr("kPa gauge"), Unit::kPaGauge},
                      {tr("bar gauge"), Unit::barGauge},
                      {tr("psi gauge"), Unit::psiGauge},
                      {tr("kPa absolute"), Unit::kPaAbsolute}},
                     m_settings.pressureUnit(),
                     [this](Unit unit) { m_settings.setPressureUnit(unit); });
    addChoices<int>(grid, tr("Lock"), tr("After that long without a key or a pointer."),
                    {{tr("5 min"), 5}, {tr("10 min"), 10}, {tr("20 min"), 20}},
                    m_settings.idleMinutes(),
                    [this](int minutes) { m_settings.setIdleMinutes(minutes); });
    page->addLayout(grid);
    page->addWidget(makeTopics());
    page->addWidget(makeLabel(tr("Journal"), Type::strong));
    auto* const file = makeMuted(text(workstation.desk.file().string()));
    file->setTextInteractionFlags(Qt::TextSelectableByMouse);
    page->addWidget(file);
    page->addStretch();
}

QWidget* WorkstationPage::makeTopics()
{
    auto* const edit = new FileEdit(FileEdit::What::folder, tr("Choose the folder of your topics"));
    auto* const field = new Field(
        tr("Topics of your own"), edit,
        tr("A folder with this facility's answers to questions from the floor; empty: none."));
    edit->line()->setText(m_settings.topicsFolder());
    const auto check = [edit, field] {
        const bool isThere = edit->path().isEmpty() || QFileInfo(edit->path()).isDir();
        field->setError(isThere ? QString() : tr("There is no folder of this name."));
    };
    check();
    connect(edit->line(), &QLineEdit::textChanged, this, [this, edit, check] {
        m_settings.setTopicsFolder(edit->path());
        check();
    });
    return field;
}

} // namespace loadwarden::ui
