#include "tests/benchmarks/window/figures.h"
#include "tests/benchmarks/window/measures.h"
#include "tests/benchmarks/window/statements.h"
#include "ui/today/need_row.h"

#include <QProcess>
#include <QTest>

#include <cstdio>
#include <cstdlib>
#include <stdexcept>

namespace loadwarden::benchmarks {
namespace {

constexpr int timesStarted = 9;

constexpr auto quickly = "--today";
constexpr auto counting = "--count"; // what counts is slower

std::vector<double> ask(const std::string& program, const char* how)
{
    QProcess process;
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process.start(QString::fromStdString(program),
                  {QLatin1String(how), QString::number(Moment::now().wall, 'f', 6)});
    if (!process.waitForFinished(-1) || process.exitCode() != 0) {
        throw std::runtime_error("the program that was started ended badly");
    }
    std::vector<double> numbers;
    const QByteArray said = process.readAllStandardOutput().trimmed();
    for (const QByteArray& number : said.mid(said.lastIndexOf('\n') + 1).split(' ')) {
        numbers.push_back(number.toDouble());
    }
    return numbers;
}

/// Which statement ran how often, for who wants to better that.
void tell(const std::map<std::string, std::int64_t>& statements)
{
    if (std::getenv("LOADWARDEN_STATEMENTS") == nullptr) {
        return;
    }
    for (const auto& [sql, times] : statements) {
        std::fprintf(stderr, "%6lld %.150s\n", static_cast<long long>(times), sql.c_str());
    }
}

} // namespace

void countIfAsked(const std::string& how)
{
    if (how == counting) {
        countStatements();
    }
}

int todayOnce(PaintWatch& application, double begun)
{
    BenchDesktop desktop(application, longJournal());
    const Moment asks = desktop.open();
    desktop.typeWho();
    QTest::qWait(1'500); // nobody types a PIN faster
    (void)takeStatements();
    const Moment entered = Moment::now();
    desktop.enter();
    const Moment there = application.painted([&] { return desktop.isTodayThere(); });
    const auto statements = takeStatements();
    tell(statements);
    const auto rows = desktop.window().findChildren<ui::NeedRow*>().size();
    const auto snapshot = statements.find("BEGIN DEFERRED");
    const std::int64_t snapshots = snapshot == statements.end() ? 0 : snapshot->second;
    std::fprintf(stdout, "%f %f %f %f %lld %zu %lld %lld\n", asks.wall - begun, asks.processor,
                 (there - entered).wall, (there - entered).processor,
                 static_cast<long long>(queriesIn(statements)), statements.size(),
                 static_cast<long long>(rows),
                 static_cast<long long>(snapshots));
    return 0;
}

void measureToday(const std::string& program)
{
    std::vector<Taken> bare;
    std::vector<Taken> asks;
    std::vector<Taken> today;
    std::vector<Taken> beyond;
    for (int i = 0; i < timesStarted; ++i) {
        const auto without = ask(program, "--bare");
        const auto with = ask(program, quickly);
        bare.push_back({without.at(0), without.at(1)});
        asks.push_back({with.at(0), with.at(1)});
        today.push_back({with.at(2), with.at(3)});
        beyond.push_back(
            {with[0] + with[2] - without[0], with[1] + with[3] - without[1]});
    }
    printTimes("a bare window, from its program's start", "", bare);
    printTimes("the sign-in, from its program's start", "", asks);
    printTimes("filled Today, from the last key of the PIN", "", today);
    printTimes("both together, beyond the bare window", "120", beyond);
    const auto counted = ask(program, counting);
    printNumber("rows of what needs somebody on Today", "", counted.at(6));
    printNumber("queries from that key on", "8", counted.at(4));
    printNumber("different ones", "", counted.at(5));
    printNumber("snapshots of the journal", "", counted.at(7));
}

} // namespace loadwarden::benchmarks
