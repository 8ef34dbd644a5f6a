#pragma once

#include "core/quantities/method.h"

#include <QWidget>

#include <vector>

class QCheckBox;

namespace loadwarden::ui {

/// The methods for which something is made, each ticked or not.
class MethodsEdit : public QWidget {
    Q_OBJECT

public:
    explicit MethodsEdit(QWidget* parent = nullptr);

    void set(MethodSet methods);
    [[nodiscard]] MethodSet value() const;
    /// Empty where nothing is.
    [[nodiscard]] QString whatIsWrong() const;

private:
    struct Box {
        Method method;
        QCheckBox* box;
    };

    std::vector<Box> m_boxes;
};

} // namespace loadwarden::ui
