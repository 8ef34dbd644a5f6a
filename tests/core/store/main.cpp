#include <gmock/gmock.h>

#include <QCoreApplication>

int main(int argc, char** argv)
{
    // Qt loads the drivers of databases only for an application.
    const QCoreApplication application(argc, argv);
    testing::InitGoogleMock(&argc, argv);
    return RUN_ALL_TESTS();
}
