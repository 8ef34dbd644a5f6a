#include "ui/first_start/sterilizers_step.h"

#include "core/exchange/specification_library.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFrame>
#include <QGridLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {

SterilizersStep::SterilizersStep(QWidget* parent)
    : Step(tr("Your sterilizers"),
           tr("Name each as its printout names it. A template gives the limits of its program; "
              "compare them with the maker's instructions for use before the first load. All of "
              "this can be left for later."),
           parent),
      m_column(new QVBoxLayout)
{
    m_column->setSpacing(space::medium);
    auto* const rows = new QWidget;
    rows->setLayout(m_column);
    m_column->setContentsMargins(0, 0, 0, 0);
    add(rows);
    auto* const another = makeButton(tr("&Add a sterilizer"));
    auto* const line = new QWidget;
    auto* const place = new QHBoxLayout(line);
    place->setContentsMargins(0, 0, 0, 0);
    place->addWidget(another);
    place->addStretch();
    add(line);
    add(makeMuted(tr("A copy of the default policy goes into the journal, too. A supervisor reads "
                     "it, compares it with the facility's own, and signs a revision.")));
    connect(another, &QPushButton::clicked, this, &SterilizersStep::addRow);
    setFocusProxy(another);
}

void SterilizersStep::addRow()
{
    auto* const frame = new QFrame;
    frame->setObjectName(QStringLiteral("panel"));
    Row row{.frame = frame,
            .name = new QLineEdit,
            .model = new QLineEdit,
            .specification = new QComboBox,
            .program = new QLineEdit,
            .inService = new QCheckBox(tr("It is &qualified and in service")),
            .nameField = nullptr,
            .programField = nullptr};
    row.specification->addItem(tr("No template"));
    for (const std::string& name : SpecificationLibrary::builtIn().names()) {
        row.specification->addItem(text(name), text(name));
    }
    row.nameField = new Field(tr("&Name on the printout"), row.name);
    row.programField = new Field(tr("Pro&gram on the printout"), row.program);
    auto* const remove = makeButton(tr("Take it away"), ButtonKind::quiet);
    auto* const grid = new QGridLayout(frame);
    grid->setContentsMargins(space::medium, space::medium, space::medium, space::small);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(space::small);
    grid->addWidget(row.nameField, 0, 0);
    grid->addWidget(new Field(tr("Mo&del"), row.model), 0, 1);
    grid->addWidget(new Field(tr("Temp&late"), row.specification), 1, 0);
    grid->addWidget(row.programField, 1, 1);
    grid->addWidget(row.inService, 2, 0);
    grid->addWidget(remove, 2, 1, Qt::AlignRight);
    connect(remove, &QPushButton::clicked, this, [this, frame] { removeRow(frame); });
    m_column->addWidget(frame);
    frame->show(); // at once, so that it can take the keyboard
    m_rows.push_back(row);
    row.name->setFocus();
}

void SterilizersStep::removeRow(const QWidget* frame)
{
    const auto row = std::ranges::find(m_rows, frame, &Row::frame);
    if (row != m_rows.end()) {
        row->frame->deleteLater();
        m_rows.erase(row);
    }
}

bool SterilizersStep::check()
{
    bool isGood = true;
    for (const Row& row : m_rows) {
        isGood = needs(row.nameField, row.name, tr("Type its name, or take it away.")) && isGood;
        const bool hasProgram =
            row.specification->currentIndex() == 0 || !row.program->text().trimmed().isEmpty();
        row.programField->setError(hasProgram ? QString()
                                              : tr("Type how the printout names the program."));
        isGood = isGood && hasProgram;
    }
    return isGood;
}

void SterilizersStep::fill(FirstDay& day) const
{
    day.sterilizers.clear();
    for (const Row& row : m_rows) {
        day.sterilizers.push_back(
            {.name = row.name->text().trimmed().toStdString(),
             .model = row.model->text().trimmed().toStdString(),
             .testMinute = 0,
             .specification = row.specification->currentData().toString().toStdString(),
             .program = row.program->text().trimmed().toStdString(),
             .isInService = row.inService->isChecked()});
    }
}

} // namespace loadwarden::ui
