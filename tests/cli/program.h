// Runs the built program as a person does, and gives back what it printed and its exit status.
#pragma once

#include <string>
#include <vector>

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

private:
    std::string out_, err_;
    int child_ = -1, status_ = 0;
    bool over_ = false;
};

// A fresh folder for one test case, gone with it.
class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    const std::string& path() const { return path_; }
    std::string file(const std::string& name) const { return path_ + "/" + name; }
    std::string write(const std::string& name, const std::string& bytes) const; // the path
    std::size_t files() const;

private:
    std::string path_;
};

std::string file_text(const std::string& path);

} // namespace spurwright::test
