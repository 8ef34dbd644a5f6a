#include "demo/department/department.h"

#include <QCoreApplication>

#include <exception>
#include <filesystem>
#include <iostream>
#include <optional>

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    const auto until =
        argc == 4 ? loadwarden::parseInstant(argv[3]) : std::optional(loadwarden::lastMoment);
    if (argc < 3 || argc > 4 || !until) {
        std::cerr << "usage: loadwarden-demo NEW-JOURNAL FOLDER [UNTIL]\n"
                     "UNTIL: where the story stops, as 2031-03-14T13:10-05:00; with it, that "
                     "Friday has more to see\n";
        return 2;
    }
    try {
        using namespace loadwarden::demo;
        Department department{argv[1], argv[2]};
        registerEverything(department);
        planThreeWeeks(department, argc == 4);
        department.run(*until);
        std::cout << department.loads() << " loads are recorded in " << argv[1] << ", with "
                  << department.recordings() << " simulated recorders' files of "
                  << department.recordedBytes() / 1'024 << " KiB in all.\n";
    } catch (const std::exception& error) {
        std::cerr << "loadwarden-demo: " << error.what() << '\n';
        return 2;
    }
    return 0;
}
