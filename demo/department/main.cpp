#include "demo/department/department.h"

#include <QCoreApplication>

#include <exception>
#include <filesystem>
#include <iostream>

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    if (argc != 3) {
        std::cerr << "usage: loadwarden-demo NEW-JOURNAL FOLDER\n";
        return 2;
    }
    try {
        using namespace loadwarden::demo;
        Department department{argv[1], argv[2]};
        registerEverything(department);
        planThreeWeeks(department);
        department.run();
        std::cout << plannedLoads().size() << " loads of three weeks are recorded in " << argv[1]
                  << ".\n";
    } catch (const std::exception& error) {
        std::cerr << "loadwarden-demo: " << error.what() << '\n';
        return 2;
    }
    return 0;
}
