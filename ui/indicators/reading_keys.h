#pragma once

#include "core/indicators/reading_result.h"

#include <QtCore/qnamespace.h>

/// The keys by which an indicator is answered, wherever it is read.
namespace loadwarden::ui::reading_keys {

inline constexpr Qt::Key accept = Qt::Key_A;
inline constexpr Qt::Key reject = Qt::Key_R;
inline constexpr Qt::Key unclear = Qt::Key_U;

struct AnswerKey {
    ReadAs readAs;
    Qt::Key key;
};

inline constexpr AnswerKey all[] = {
    {ReadAs::accept, accept}, {ReadAs::reject, reject}, {ReadAs::unclear, unclear}};

} // namespace loadwarden::ui::reading_keys
