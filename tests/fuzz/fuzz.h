// What every fuzzer shares. Built with libFuzzer (SPURWRIGHT_FUZZ, clang), or with corpus_main.cpp as a plain test that
// runs the kept corpus.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace spurwright::fuzz {

inline std::string_view text(const std::uint8_t* data, std::size_t size) {
    return size == 0 ? std::string_view{} : std::string_view(reinterpret_cast<const char*>(data), size);
}

} // namespace spurwright::fuzz
