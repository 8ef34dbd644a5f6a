#pragma once

#include "core/desk/registers.h"
#include "ui/shell/area.h"

#include <QWidget>

#include <memory>

namespace loadwarden::ui {

using RegistersNow = std::shared_ptr<const Registers>;

/// A section of the settings. It is alive as long as the page, so that what is half typed on it
/// stays.
class Section : public QWidget {
    Q_OBJECT

public:
    explicit Section(const Workstation& workstation) : m_workstation(workstation) {}

    /// What stands in the registers now; what somebody is typing is left alone.
    virtual void show(const RegistersNow& registers) = 0;
    /// They could not be read; what was shown before stays.
    virtual void notRead() {}
    /// Somebody else works here now.
    virtual void lookAtRights() = 0;

signals:
    void says(const QString& what, const QString& next);

protected:
    [[nodiscard]] const Workstation& workstation() const { return m_workstation; }

private:
    Workstation m_workstation;
};

} // namespace loadwarden::ui
