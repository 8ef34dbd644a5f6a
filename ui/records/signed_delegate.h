#pragma once

#include "ui/look/look.h"

#include <QStyledItemDelegate>

namespace loadwarden::ui {

/// Puts the mark of a verdict before its word.
class SignedDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    SignedDelegate(Look& look, QObject* parent) : QStyledItemDelegate(parent), m_look(look) {}

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

private:
    Look& m_look;
};

} // namespace loadwarden::ui
