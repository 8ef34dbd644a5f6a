#include "tests/ui/walk/faults.h"

#include "ui/look/colours.h"

#include <QAbstractButton>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

#include <algorithm>
#include <map>

namespace loadwarden::ui_tests {
namespace {

/// Of a page's column, left and right.
constexpr int marginOfPages = 56;

QString nameOf(const QWidget* widget)
{
    QString text;
    if (const auto* const label = qobject_cast<const QLabel*>(widget)) {
        text = label->text();
    } else if (const auto* const button = qobject_cast<const QAbstractButton*>(widget)) {
        text = button->text();
    }
    return QStringLiteral("%1 \"%2\"")
        .arg(QLatin1String(widget->metaObject()->className()),
             text.isEmpty() ? widget->accessibleName() : text);
}

bool isInScrollArea(const QWidget* widget)
{
    for (const QWidget* up = widget->parentWidget(); up != nullptr; up = up->parentWidget()) {
        if (qobject_cast<const QScrollArea*>(up) != nullptr) {
            return true;
        }
    }
    return false;
}

QRect inWindow(const QWidget* widget)
{
    return {widget->mapTo(widget->window(), QPoint(0, 0)), widget->size()};
}

/// The whole of it is painted now.
bool isSeenWhole(const QWidget* widget)
{
    return widget->visibleRegion().boundingRect() == widget->rect();
}

double contrastIn(const QImage& image)
{
    std::map<QRgb, int> counts;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            ++counts[image.pixel(x, y)];
        }
    }
    const auto behind =
        std::ranges::max_element(counts, {}, [](const auto& each) { return each.second; });
    double best = 1.0;
    for (const auto& [colour, count] : counts) {
        best = std::max(best, ui::contrastOf(QColor(colour), QColor(behind->first)));
    }
    return best;
}

bool isPressed(const QWidget* widget)
{
    return qobject_cast<const QAbstractButton*>(widget) != nullptr
           || qobject_cast<const QComboBox*>(widget) != nullptr
           || qobject_cast<const QLineEdit*>(widget) != nullptr;
}

bool isPartOfAnother(const QWidget* widget)
{
    // The corner between a table's headers that does nothing.
    const bool isCorner = widget->inherits("QTableCornerButton") && !widget->isEnabled();
    return isCorner || qobject_cast<const QComboBox*>(widget->parentWidget()) != nullptr
           || widget->objectName().startsWith(QLatin1String("qt_"));
}

bool takesTab(const QWidget* widget)
{
    return (widget->focusPolicy() & Qt::TabFocus) != 0 && widget->isEnabled()
           && widget->focusProxy() == nullptr && !isPartOfAnother(widget);
}

/// Everything that scrolls shows its top: where Tab went before must not decide where things are.
void scrollToTop(const QWidget& window)
{
    for (const auto* const scroll : window.findChildren<QScrollArea*>()) {
        scroll->verticalScrollBar()->setValue(0);
    }
}

} // namespace

std::vector<QWidget*> visibleWidgets(const QWidget& window)
{
    std::vector<QWidget*> seen;
    for (QWidget* const widget : window.findChildren<QWidget*>()) {
        if (widget->isVisible() && widget->window() == &window) {
            seen.push_back(widget);
        }
    }
    return seen;
}

std::vector<Fault> lowContrast(QWidget& window)
{
    constexpr double least = 4.5;
    std::vector<Fault> faults;
    const QImage image = window.grab().toImage();
    for (const QWidget* const widget : visibleWidgets(window)) {
        const auto* const label = qobject_cast<const QLabel*>(widget);
        const auto* const button = qobject_cast<const QAbstractButton*>(widget);
        const bool hasText = (label != nullptr && !label->text().trimmed().isEmpty())
                             || (button != nullptr && !button->text().trimmed().isEmpty());
        if (!hasText || !widget->isEnabled() || !isSeenWhole(widget)) {
            continue;
        }
        // Within a button's outline only.
        const int inset = button != nullptr ? 6 : 0;
        const double contrast =
            contrastIn(image.copy(inWindow(widget).adjusted(inset, inset, -inset, -inset)));
        if (contrast < least) {
            faults.push_back(
                {QStringLiteral("contrast %1:1").arg(contrast, 0, 'f', 2), nameOf(widget)});
        }
    }
    return faults;
}

std::vector<Fault> clippedText(const QWidget& window)
{
    std::vector<Fault> faults;
    for (const QWidget* const widget : visibleWidgets(window)) {
        if (!isInScrollArea(widget) && !window.rect().contains(inWindow(widget))) {
            faults.push_back({QStringLiteral("reaches over the window's edge"), nameOf(widget)});
        }
        if (const auto* const label = qobject_cast<const QLabel*>(widget)) {
            if (label->text().isEmpty()) {
                continue;
            }
            const bool isClipped = label->wordWrap()
                                       ? label->heightForWidth(label->width()) > label->height()
                                       : label->sizeHint().width() > label->width();
            if (isClipped || label->minimumSizeHint().width() > label->width()) {
                faults.push_back({QStringLiteral("is clipped"), nameOf(widget)});
            }
        } else if (const auto* const button = qobject_cast<const QAbstractButton*>(widget)) {
            const int needed =
                button->fontMetrics().size(Qt::TextShowMnemonic, button->text()).width();
            if (!button->text().isEmpty() && needed + 8 > button->width()) {
                faults.push_back({QStringLiteral("is clipped"), nameOf(widget)});
            }
        }
    }
    return faults;
}

namespace {

/// What inside a widget asks for more width than there is, as deep as it goes.
QString tooWide(const QWidget* widget, int width)
{
    for (const auto* const child :
         widget->findChildren<const QWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
        if (child->isVisible() && child->minimumSizeHint().width() > width) {
            const QString deeper = tooWide(child, width);
            const QString name = nameOf(child) + QStringLiteral(" in ")
                                 + QLatin1String(widget->metaObject()->className());
            return deeper.isEmpty() ? name : deeper;
        }
    }
    return {};
}

} // namespace

std::vector<Fault> tooLarge(const QWidget& window, const QSize& most)
{
    std::vector<Fault> faults;
    for (const QWidget* const widget : visibleWidgets(window)) {
        const QSize least = widget->minimumSizeHint().expandedTo(widget->minimumSize());
        if (!isInScrollArea(widget)
            && (least.width() > most.width() || least.height() > most.height())) {
            faults.push_back(
                {QStringLiteral("needs at least %1 × %2").arg(least.width()).arg(least.height()),
                 nameOf(widget)});
        }
    }
    return faults;
}

std::vector<Fault> cutByScrolling(const QWidget& window)
{
    std::vector<Fault> faults;
    for (const auto* const area : window.findChildren<const QScrollArea*>()) {
        if (!area->isVisible() || area->widget() == nullptr
            || area->horizontalScrollBarPolicy() != Qt::ScrollBarAlwaysOff) {
            continue;
        }
        const int seen = area->viewport()->width();
        const int over = area->widget()->width() - seen;
        if (over > 0) {
            faults.push_back({QStringLiteral("is wider by %1 than what is seen of it").arg(over),
                              nameOf(area) + u' ' + tooWide(area->widget(), seen - marginOfPages)});
        }
    }
    return faults;
}

std::vector<Fault> nameless(const QWidget& window)
{
    std::vector<Fault> faults;
    for (QWidget* const widget : visibleWidgets(window)) {
        if ((!isPressed(widget) && !takesTab(widget)) || isPartOfAnother(widget)) {
            continue;
        }
        const QAccessibleInterface* const told = QAccessible::queryAccessibleInterface(widget);
        if (told == nullptr || told->text(QAccessible::Name).trimmed().isEmpty()) {
            faults.push_back({QStringLiteral("has no accessible name"), nameOf(widget)});
        }
    }
    return faults;
}

std::vector<Fault> wrongTabOrder(QWidget& window)
{
    scrollToTop(window);
    std::vector<Fault> faults;
    std::vector<QWidget*> expected;
    for (QWidget* const widget : visibleWidgets(window)) {
        if (takesTab(widget)) {
            expected.push_back(widget);
        }
    }
    if (expected.empty()) {
        return {{QStringLiteral("nothing takes the keyboard"), nameOf(&window)}};
    }
    std::ranges::sort(expected, {}, [](const QWidget* each) {
        const QPoint at = inWindow(each).topLeft();
        return std::pair{at.y(), at.x()};
    });
    expected.front()->setFocus();
    std::vector<QWidget*> reached;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        QWidget* focus = QApplication::focusWidget();
        while (focus != nullptr && isPartOfAnother(focus)) {
            focus = focus->parentWidget();
        }
        if (focus != nullptr && std::ranges::find(reached, focus) == reached.end()) {
            reached.push_back(focus);
        }
        QTest::keyClick(focus == nullptr ? &window : focus, Qt::Key_Tab);
    }
    scrollToTop(window);
    for (const QWidget* const widget : expected) {
        if (std::ranges::find(reached, widget) == reached.end()) {
            faults.push_back({QStringLiteral("is not reached by Tab"), nameOf(widget)});
        }
    }
    for (std::size_t i = 1; i < reached.size(); ++i) {
        const QRect before = inWindow(reached[i - 1]);
        const QRect after = inWindow(reached[i]);
        const bool goesUp = after.bottom() < before.top() && after.left() <= before.right();
        const bool goesLeft = after.top() <= before.bottom() && after.bottom() >= before.top()
                              && after.right() < before.left();
        if (goesUp || goesLeft) {
            faults.push_back({QStringLiteral("comes by Tab after %1").arg(nameOf(reached[i - 1])),
                              nameOf(reached[i])});
        }
    }
    return faults;
}

std::vector<Fault> smallTargets(const QWidget& window)
{
    constexpr int least = 44;
    std::vector<Fault> faults;
    for (const QWidget* const widget : visibleWidgets(window)) {
        if (isPressed(widget) && !isPartOfAnother(widget)
            && (widget->height() < least || widget->width() < least)) {
            faults.push_back(
                {QStringLiteral("is %1 by %2 pixels").arg(widget->width()).arg(widget->height()),
                 nameOf(widget)});
        }
    }
    return faults;
}

} // namespace loadwarden::ui_tests
