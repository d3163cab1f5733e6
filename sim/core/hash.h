// 64-bit FNV-1a over bytes. It finds differences; it guards against no one.
// Source: the published offset basis and prime (memory), with the published vectors in the tests.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace spurwright {

class Hash {
public:
    constexpr void add(std::string_view bytes) {
        for (const char c : bytes) state_ = (state_ ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
    }
    constexpr std::uint64_t value() const { return state_; }

private:
    std::uint64_t state_ = 0xcbf29ce484222325u;
};

constexpr std::uint64_t hash_of(std::string_view bytes) {
    Hash hash;
    hash.add(bytes);
    return hash.value();
}

// 16 lower-case hexadecimal digits.
std::string hash_text(std::uint64_t hash);

}  // namespace spurwright
