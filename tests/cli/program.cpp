#include "tests/cli/program.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>

namespace spurwright::test {

namespace {

void change_environment(const std::vector<std::string>& changes) {
    for (const std::string& change : changes) {
        const auto equals = change.find('=');
        if (equals == std::string::npos) ::unsetenv(change.c_str());
        else ::setenv(change.substr(0, equals).c_str(), change.c_str() + equals + 1, 1);
    }
}

std::string scratch_file(const char* what) {
    std::string name = (std::filesystem::temp_directory_path() / ("spurwright-" + std::string(what) + "-XXXXXX")).string();
    const int file = ::mkstemp(name.data());
    if (file < 0) std::abort();
    ::close(file);
    return name;
}

} // namespace

Running::Running(const std::string& program, const std::vector<std::string>& arguments,
                 const std::vector<std::string>& environment, const std::string& folder)
    : out_(scratch_file("out")), err_(scratch_file("err")) {
    std::vector<std::string> all{program};
    all.insert(all.end(), arguments.begin(), arguments.end());
    std::vector<char*> argv;
    for (std::string& one : all) argv.push_back(one.data());
    argv.push_back(nullptr);
    child_ = ::fork();
    if (child_ == 0) {
        const int flags = O_WRONLY | O_CREAT | O_TRUNC;
        change_environment(environment);
        if (::chdir(folder.c_str()) != 0 || ::dup2(::open(out_.c_str(), flags, 0600), 1) < 0 ||
            ::dup2(::open(err_.c_str(), flags, 0600), 2) < 0)
            ::_exit(127);
        ::execv(argv[0], argv.data());
        ::_exit(127);
    }
}

void Running::kill() {
    if (ended()) return;
    ::kill(child_, SIGKILL);
    ::waitpid(child_, &status_, 0);
    over_ = true;
}

Running::~Running() {
    kill();
    std::error_code ignored;
    std::filesystem::remove(out_, ignored);
    std::filesystem::remove(err_, ignored);
}

bool Running::ended() {
    if (!over_) over_ = ::waitpid(child_, &status_, WNOHANG) != 0;
    return over_;
}

Ran Running::wait() {
    if (!over_) ::waitpid(child_, &status_, 0);
    over_ = true;
    return {WIFEXITED(status_) ? WEXITSTATUS(status_) : -1, file_text(out_), file_text(err_)};
}

Ran run_program_of(const std::string& program, const std::vector<std::string>& arguments,
                   const std::vector<std::string>& environment, const std::string& folder) {
    return Running(program, arguments, environment, folder).wait();
}

Ran run_program(const std::vector<std::string>& arguments, const std::string& folder) {
    return run_program_of(SPURWRIGHT_PROGRAM, arguments, {}, folder);
}

} // namespace spurwright::test
