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
