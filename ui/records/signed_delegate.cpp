#include "ui/records/signed_delegate.h"

#include "ui/records/record_text.h"
#include "ui/records/records_model.h"

#include <QPainter>

namespace loadwarden::ui {

void SignedDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const
{
    constexpr int side = 18;
    QStyledItemDelegate::initStyleOption(option, index);
    const auto* const model = qobject_cast<const RecordsModel*>(index.model());
    const RecordRow* const row = model == nullptr ? nullptr : model->at(index.row());
    if (row == nullptr) {
        return;
    }
    const qreal ratio = option->widget == nullptr ? 1.0 : option->widget->devicePixelRatioF();
    QPixmap mark(QSize(side, side) * ratio);
    mark.setDevicePixelRatio(ratio);
    mark.fill(Qt::transparent);
    {
        QPainter painter(&mark);
        const SignedMark shown = signedMark(*row);
        paintGlyph(painter, shown.glyph, QRectF(0, 0, side, side),
                   toneOf(m_look.colours(), shown.tone).ink, m_look.colours().surface);
    }
    option->icon = QIcon(mark);
    option->icon.addPixmap(mark, QIcon::Selected); // not tinted
    option->decorationSize = {side, side};
    option->features |= QStyleOptionViewItem::HasDecoration;
}

} // namespace loadwarden::ui
