#pragma once

#include "core/indicators/directions.h"
#include "core/indicators/product.h"

#include <QString>
#include <QWidget>

#include <optional>

namespace loadwarden::ui {

/// What is known of how a product is read.
struct ReadingGuide {
    int type = 0; ///< ISO 11140-1; 0: not stated
    std::optional<ReadingDirections> directions;
    /// The facility's; without it nobody can tell whether the directions are due for a review.
    std::optional<Date> today;
};

/// Why the directions must not simply be followed: there are none, or nobody has looked for newer
/// ones in time. Empty: nothing is against it.
[[nodiscard]] QString warningOf(const ReadingGuide& guide);

/// A product's own directions, where they are from, and what its type can and cannot tell.
class DirectionsView : public QWidget {
    Q_OBJECT

public:
    explicit DirectionsView(const ReadingGuide& guide, QWidget* parent = nullptr);
};

} // namespace loadwarden::ui
