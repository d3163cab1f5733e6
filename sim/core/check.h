// Checks for what only a bug can cause: always on, print both values, abort. What a user or a file can cause is an
// Error (error.h) instead.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>

namespace spurwright {

template <class A, class B>
[[noreturn]] void check_failed(const char* file, int line, const char* text, const A& a, const B& b) {
    const auto shown = [](const auto& v) {
        using T = std::decay_t<decltype(v)>;
        if constexpr (std::is_arithmetic_v<T>) return std::to_string(v);
        else if constexpr (std::is_convertible_v<T, std::string>) return std::string(v);
        else return std::string("(value)");
    };
    std::fprintf(stderr, "%s:%d: check failed: %s (%s, %s)\n", file, line, text, shown(a).c_str(), shown(b).c_str());
    std::abort();
}

}  // namespace spurwright

#define SPURWRIGHT_CHECK(a, relation, b)                                                                       \
    do {                                                                                                       \
        const auto& left_ = (a);                                                                               \
        const auto& right_ = (b);                                                                              \
        if (!(left_ relation right_))                                                                          \
            ::spurwright::check_failed(__FILE__, __LINE__, #a " " #relation " " #b, left_, right_);            \
    } while (false)
