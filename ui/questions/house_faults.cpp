#include "ui/questions/house_faults.h"

#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"

#include <QVBoxLayout>

#include <algorithm>
#include <set>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostSaid = 5;

QString headingOf(const std::vector<TomlError>& faults)
{
    std::set<std::string> files;
    for (const TomlError& fault : faults) {
        files.insert(fault.file);
    }
    return files.size() == 1
               ? HouseFaults::tr("A file of this facility's own topics is left out until it is "
                                 "mended. All else is used.")
               : HouseFaults::tr("%1 files of this facility's own topics are left out until they "
                                 "are mended. All else is used.")
                     .arg(files.size());
}

} // namespace

HouseFaults::HouseFaults(QWidget* parent) : QFrame(parent), m_column(new QVBoxLayout(this))
{
    setObjectName(QStringLiteral("banner"));
    setProperty("tone", "waiting");
    m_column->setContentsMargins(space::medium, space::small, space::medium, space::small);
    m_column->setSpacing(space::hair);
    hide();
}

void HouseFaults::show(const std::vector<TomlError>& faults)
{
    setVisible(!faults.empty());
    if (faults == m_shown) {
        return;
    }
    m_shown = faults;
    clearLayout(m_column);
    m_column->addWidget(makeLabel(headingOf(faults), Type::strong));
    const std::size_t said = std::min(mostSaid, faults.size());
    for (std::size_t i = 0; i < said; ++i) {
        QLabel* const label = makeLabel(text(textOf(faults[i])));
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        m_column->addWidget(label);
    }
    if (said < faults.size()) {
        m_column->addWidget(makeMuted(
            tr("And %1 more, which the command \"ask --topics\" says.").arg(faults.size() - said)));
    }
}

} // namespace loadwarden::ui
