#pragma once

#include "core/desk/look_up.h"

#include <QKeySequence>
#include <QString>
#include <QWidget>

#include <functional>
#include <string>
#include <vector>

namespace loadwarden::ui {

class DeskLink;
class LocalSettings;
class Look;
class Session;

/// What every page is given.
struct Workstation {
    Look& look;
    LocalSettings& settings;
    DeskLink& desk;
    Session& session;
};

/// A page of a work area. It is alive as long as the window, also while another page or the lock
/// stands before it, so that nothing half-typed on it is lost.
class Page : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    /// It is to be seen now: whatever of it may be old is asked for anew.
    virtual void shown() {}

    /// Time may have passed unseen: the window came back, or the computer had slept.
    virtual void lookAtClock() {}

    /// Goes to something on it, in the page's own words; it has just been shown.
    virtual void goTo(const QString& /*thing*/) {}

    /// Something was scanned while this page is to be seen. True: it is for this page.
    virtual bool takeScan(const QString& /*text*/, const LookedUp& /*found*/) { return false; }

signals:
    /// Somebody wants to go to another area, and there to something on it (goTo) or to nothing in
    /// particular.
    void wantsArea(const QString& id, const QString& thing = {});
    /// A sterilizer (sz-) needs its air-removal test now.
    void wantsTest(const QString& sterilizer);
    /// Somebody wants to see a cycle (ld-), or in it an item or an indicator by its id, or what
    /// settles a finding by its key, in whatever area shows it.
    void wantsCycle(const QString& cycle, const QString& item);
    /// Something to be said across the window.
    void says(const QString& what, const QString& next);
};

/// A work area of the program.
struct Area {
    const char* id;    ///< never translated
    QString (*name)(); ///< in the language that is installed, with a mnemonic
    QKeySequence shortcut;
    Page* (*make)(Workstation&);
    /// Shows a cycle, where the area is the one that does; may be null.
    void (*open)(Page&, const QString& cycle, const QString& item);
    /// Begins the air-removal test of a sterilizer, where the area is the one that does.
    void (*beginTest)(Page&, const QString& sterilizer) = nullptr;
};

/// Every area that has a page, in the order in which they stand: a new page adds one line there.
[[nodiscard]] const std::vector<Area>& areas();

} // namespace loadwarden::ui
