#include "tests/cli/program.h"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace spurwright::test {

Ran run_program(const std::vector<std::string>& arguments, const std::string& folder) {
    const Folder scratch;
    const std::string out = scratch.file("out"), err = scratch.file("err");
    std::vector<std::string> all{SPURWRIGHT_PROGRAM};
    all.insert(all.end(), arguments.begin(), arguments.end());
    std::vector<char*> argv;
    for (std::string& one : all) argv.push_back(one.data());
    argv.push_back(nullptr);
    const pid_t child = ::fork();
    if (child == 0) {
        const int flags = O_WRONLY | O_CREAT | O_TRUNC;
        if (::chdir(folder.c_str()) != 0 || ::dup2(::open(out.c_str(), flags, 0600), 1) < 0 ||
            ::dup2(::open(err.c_str(), flags, 0600), 2) < 0)
            ::_exit(127);
        ::execv(argv[0], argv.data());
        ::_exit(127);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, file_text(out), file_text(err)};
}

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "spurwright-cli-XXXXXX").string();
    if (!::mkdtemp(name.data())) std::abort();
    path_ = name;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

std::string Folder::write(const std::string& name, const std::string& bytes) const {
    std::ofstream(file(name), std::ios::binary) << bytes;
    return file(name);
}

std::size_t Folder::files() const {
    std::size_t count = 0;
    for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(path_)) ++count;
    return count;
}

std::string file_text(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

} // namespace spurwright::test
