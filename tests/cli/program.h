// Runs the built program as a person does, and gives back what it printed and its exit status.
#pragma once

#include <string>
#include <vector>

#include "tests/support/folder.h"

namespace spurwright::test {

struct Ran {
    int status = -1; // -1: ended by a signal
    std::string out, err;
};

Ran run_program(const std::vector<std::string>& arguments, const std::string& folder = ".");

// Another program with some of the environment changed: "NAME=VALUE" sets, "NAME" alone takes away.
Ran run_program_of(const std::string& program, const std::vector<std::string>& arguments,
                   const std::vector<std::string>& environment = {}, const std::string& folder = ".");

// The same, not waited for; ends with the object at the latest.
class Running {
public:
    Running(const std::string& program, const std::vector<std::string>& arguments,
            const std::vector<std::string>& environment, const std::string& folder = ".");
    ~Running();
    Running(const Running&) = delete;
    Running& operator=(const Running&) = delete;
    Ran wait();     // until it ends by itself
    bool ended();   // does not wait
    void kill();    // at once, where it has not ended

private:
    std::string out_, err_;
    int child_ = -1, status_ = 0;
    bool over_ = false;
};

} // namespace spurwright::test
