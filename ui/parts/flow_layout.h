#pragma once

#include <QLayout>

#include <memory>
#include <vector>

namespace loadwarden::ui {

/// Things beside each other as far as there is room, then in further lines, each at the top of its
/// line.
class FlowLayout : public QLayout {
    Q_OBJECT

public:
    FlowLayout();
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    [[nodiscard]] QLayoutItem* takeAt(int index) override;
    [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSize() const override;
    void setGeometry(const QRect& rect) override;

private:
    /// Puts things where they belong, or only measures; the height that is needed.
    int arrange(const QRect& rect, bool moves) const;

    std::vector<std::unique_ptr<QLayoutItem>> m_items;
};

} // namespace loadwarden::ui
