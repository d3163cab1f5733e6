// Files of one test case, kept apart from everything else.
#pragma once

#include <string>

namespace spurwright::test {

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
