#include "ui/shell/desk_link.h"

#include "core/desk/sealing.h"
#include "ui/look/text.h"

namespace loadwarden::ui {
namespace {

Opened aboutOffice(Office& office)
{
    Opened about{.facility = office.identity().facility,
                 .journal = office.identity().id,
                 .zone = office.zone(),
                 .staleLock = office.staleLock(),
                 .notSealed = {}};
    try {
        (void)sealDaily(office);
    } catch (const StoreError& error) {
        // Work goes on without a seal; what is not sealed shows less when it is verified.
        about.notSealed = error.says() + ' ' + error.next();
    }
    return about;
}

} // namespace

Trouble troubleNow()
{
    try {
        throw;
    } catch (const StoreError& error) {
        return {text(error.says()), text(error.next())};
    } catch (const std::exception& error) {
        return {
            DeskLink::tr("The program made a mistake: %1.").arg(QString::fromUtf8(error.what())),
            DeskLink::tr("Nothing was recorded of this. Please report it.")};
    }
}

DeskLink::DeskLink(const std::filesystem::path& file, const Workplace& place, QObject* parent)
    : QObject(parent),
      m_file(file),
      m_place(place),
      m_thread(std::make_unique<DeskThread>(file, Access::write, place))
{
    m_thread->ask(aboutOffice).then(QtFuture::Launch::Sync, [this](QFuture<Opened> future) {
        auto answer = std::make_shared<QFuture<Opened>>(std::move(future));
        QMetaObject::invokeMethod(
            this, [this, answer] { nowOpen(*answer); }, Qt::QueuedConnection);
    });
}

void DeskLink::nowOpen(QFuture<Opened>& future)
{
    try {
        m_about = future.result(); // not takeResult(), as in answered()
    } catch (...) {
        const Trouble what = troubleNow();
        emit notOpened(what.says, what.next);
        return;
    }
    emit opened();
}

DeskLink::~DeskLink()
{
    // Its work still answers to this.
    m_thread.reset();
}

HouseStyle DeskLink::style() const
{
    return {.zone = m_about.zone, .fahrenheit = m_fahrenheit};
}

} // namespace loadwarden::ui
