#include "app/cli/desk/said_progress.h"

#include <csignal>
#include <ostream>

namespace loadwarden::cli {

namespace {

volatile std::sig_atomic_t stopAsked = 0;

void noteStop(int)
{
    stopAsked = 1;
}

} // namespace

SaidProgress::~SaidProgress()
{
    if (m_said >= 0) {
        m_err << '\n';
    }
}

bool SaidProgress::goOn(std::int64_t done, std::int64_t total)
{
    const std::int64_t percent = total <= 0 ? 100 : done * 100 / total;
    if (total >= m_least && percent != m_said) {
        m_said = percent;
        m_err << '\r' << percent << " %" << std::flush;
    }
    return true;
}

StoppableProgress::StoppableProgress(std::ostream& err, std::int64_t least)
    : SaidProgress(err, least), m_before(nullptr)
{
    stopAsked = 0;
    m_before = std::signal(SIGINT, noteStop);
}

StoppableProgress::~StoppableProgress()
{
    std::signal(SIGINT, m_before == SIG_ERR ? SIG_DFL : m_before);
}

bool StoppableProgress::goOn(std::int64_t done, std::int64_t total)
{
    (void)SaidProgress::goOn(done, total);
    return stopAsked == 0;
}

} // namespace loadwarden::cli
