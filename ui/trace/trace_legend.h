#pragma once

#include "ui/trace/trace_scene.h"

#include <QFont>
#include <QWidget>

#include <memory>
#include <optional>

namespace loadwarden::ui {

struct Colours;

/// What each line of the picture is, with its dashes, and its value at the sample that is read.
class TraceLegend : public QWidget {
    Q_OBJECT

public:
    explicit TraceLegend(QWidget* parent = nullptr);

    void show(std::shared_ptr<const TraceScene> scene, const Colours& colours, const QFont& font);
    /// The place of a sample; nullopt: none is read.
    void read(std::optional<std::size_t> sample);
    /// The same in words, for a screen reader.
    [[nodiscard]] QString said() const;

    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// Paints it into a width; gives the height that it takes.
    int paint(QPainter* painter, int width) const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::shared_ptr<const TraceScene> m_scene;
    const Colours* m_colours = nullptr;
    QFont m_font;
    std::optional<std::size_t> m_sample;
};

} // namespace loadwarden::ui
