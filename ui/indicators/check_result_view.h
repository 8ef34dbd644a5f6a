#pragma once

#include "core/indicators/reading_result.h"
#include "ui/look/look.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace loadwarden::ui {

/// How a check of reading went, with each mistake explained beside its drawing.
class CheckResultView : public QWidget {
    Q_OBJECT

public:
    CheckResultView(Look& look, const CheckResult& result,
                    const std::vector<CheckProduct>& products, QWidget* parent = nullptr);

    void focusFirst();

signals:
    void left();

private:
    void addFigures(QVBoxLayout* column, const CheckResult& result);
    [[nodiscard]] QWidget* makeMistake(const CheckResult& result, const Misread& misread,
                                       const std::vector<CheckProduct>& products);

    Look& m_look;
    QWidget* m_scroll = nullptr;
};

} // namespace loadwarden::ui
