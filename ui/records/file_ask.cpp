#include "ui/records/file_ask.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

namespace loadwarden::ui {

FileAsk::FileAsk(const QString& label, const QString& does, const QString& kinds, QWidget* parent)
    : QWidget(parent),
      m_kinds(kinds),
      m_row(new QHBoxLayout(this)),
      m_line(new QLineEdit),
      m_field(nullptr),
      m_go(makeButton(does, ButtonKind::main)),
      m_replace(makeButton(tr("Repl&ace it"), ButtonKind::main))
{
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(space::small);
    auto* const place = new QWidget;
    auto* const inside = new QHBoxLayout(place);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->setSpacing(space::small);
    inside->addWidget(m_line, 1);
    auto* const other = makeButton(tr("C&hoose"));
    other->setAccessibleName(tr("Choose a file"));
    inside->addWidget(other);
    auto* const leave = makeButton(tr("Not now"));
    inside->addSpacing(space::small);
    inside->addWidget(m_go);
    inside->addWidget(m_replace);
    inside->addWidget(leave);
    place->setFocusProxy(m_line);
    m_field = new Field(label, place);
    QString plain = label;
    m_line->setAccessibleName(plain.remove(u'&'));
    m_row->addWidget(m_field, 1);
    connect(other, &QPushButton::clicked, this, &FileAsk::choose);
    connect(m_go, &QPushButton::clicked, this, [this] { check(false); });
    connect(m_replace, &QPushButton::clicked, this, [this] { check(true); });
    connect(leave, &QPushButton::clicked, this, &FileAsk::left);
    connect(m_line, &QLineEdit::returnPressed, this, [this] { check(false); });
    connect(m_line, &QLineEdit::textEdited, this, [this] { setError({}); });
    offerReplacing(false);
}

void FileAsk::setFileAsked(bool asked)
{
    m_isFileAsked = asked;
    m_field->setVisible(asked);
    setError({});
}

void FileAsk::ask(const QString& file)
{
    m_line->setText(file);
    setError({});
    m_line->setFocus();
    m_line->end(false);
}

QString FileAsk::file() const
{
    return m_line->text().trimmed();
}

void FileAsk::setError(const QString& says)
{
    m_field->setError(says);
    if (!says.isEmpty()) {
        m_line->setFocus();
    }
    offerReplacing(false);
}

void FileAsk::offerReplacing(bool offers)
{
    m_go->setVisible(!offers);
    m_replace->setVisible(offers);
}

void FileAsk::choose()
{
    const QString chosen =
        QFileDialog::getSaveFileName(window(), m_line->accessibleName(), m_line->text(), m_kinds,
                                     nullptr, QFileDialog::DontConfirmOverwrite);
    if (!chosen.isEmpty()) {
        m_line->setText(chosen);
        setError({});
    }
}

void FileAsk::check(bool replaces)
{
    const QString name = file();
    const QFileInfo info(name);
    if (!m_isFileAsked) {
        emit chosen({}, false);
    } else if (name.isEmpty()) {
        setError(tr("Type a file name."));
    } else if (info.isDir()) {
        setError(tr("That is a folder. Type the name of a file in it."));
    } else if (!info.absoluteDir().exists()) {
        setError(tr("There is no such folder. Make it first, or choose another."));
    } else if (info.exists() && !replaces) {
        setError(tr("There is a file of this name. Replace it, or type another name."));
        offerReplacing(true);
        m_replace->setFocus();
    } else {
        emit chosen(info.absoluteFilePath(), replaces);
    }
}

bool FileAsk::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride
        && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void FileAsk::setDoes(const QString& does)
{
    m_go->setText(does);
}

void FileAsk::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        emit left();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace loadwarden::ui
