#include "scenarios/practice/paper_errand.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>

extern char** environ;

namespace spurwright::practice {
namespace {

constexpr std::size_t most_heard = 4'000;  // of what it says; our choice

std::string paper_program() {
    std::array<char, 4096> path{};
    const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
    const std::string whole(path.data(), length > 0 ? static_cast<std::size_t>(length) : 0);
    return whole.substr(0, whole.rfind('/') + 1) + "spurwright-paper";
}

std::string heard_from(int pipe) {
    std::string heard;
    std::array<char, 512> part{};
    for (;;) {
        const ssize_t n = ::read(pipe, part.data(), part.size());
        if (n < 0 && errno == EINTR) continue;
        if (n <= 0) break;
        if (heard.size() < most_heard) heard.append(part.data(), static_cast<std::size_t>(n));
    }
    while (!heard.empty() && (heard.back() == '\n' || heard.back() == ' ')) heard.pop_back();
    return heard;
}

}  // namespace

PaperAnswer run_paper(const std::vector<std::string>& words) {
    std::string program = paper_program();
    PaperAnswer answer;
    if (::access(program.c_str(), X_OK) != 0) {
        answer.no_program = true;
        return answer;
    }
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) return answer;
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], 1);
    posix_spawn_file_actions_adddup2(&actions, ends[1], 2);
    std::vector<std::string> own = words;
    std::vector<char*> all{program.data()};
    for (std::string& word : own) all.push_back(word.data());
    all.push_back(nullptr);
    pid_t child = 0;
    const int spawned = ::posix_spawn(&child, program.c_str(), &actions, nullptr, all.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    ::close(ends[1]);
    if (spawned == 0) {
        answer.said = heard_from(ends[0]);
        int status = 0;
        while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {}
        answer.done = WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }
    ::close(ends[0]);
    return answer;
}

std::string paper_path(const std::string& typed, const std::string& otherwise, const std::string& ending) {
    std::string name = typed;
    if (name.empty())
        for (const char c : otherwise) name += c == '/' || c == ' ' ? '-' : c;
    if (!name.ends_with(ending)) name += ending;
    if (name.starts_with('/')) return name;
    std::array<char, 4096> here{};
    return ::getcwd(here.data(), here.size()) ? std::string(here.data()) + "/" + name : name;
}

}  // namespace spurwright::practice
