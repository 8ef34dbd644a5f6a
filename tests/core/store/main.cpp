#include <gmock/gmock.h>

#include <QCoreApplication>

#include <cstdio>
#include <cstdlib>

int main(int argc, char** argv)
{
    // Qt loads the drivers of databases only for an application.
    const QCoreApplication application(argc, argv);
    testing::InitGoogleMock(&argc, argv);
    const int result = RUN_ALL_TESTS();
    // Continuous integration has the server and the rights that some tests need: a test that was
    // skipped there proved nothing.
    const int skipped = testing::UnitTest::GetInstance()->skipped_test_count();
    if (skipped > 0 && std::getenv("CI") != nullptr) {
        std::fprintf(stderr, "%d tests were skipped, which CI does not accept\n", skipped);
        return 1;
    }
    return result;
}
