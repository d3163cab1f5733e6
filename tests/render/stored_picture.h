// Pictures kept beside the tests: read, written, compared by how light they are. Colours have tests of their own.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace spurwright::test {

struct StoredPicture {
    int width = 0, height = 0;
    std::vector<std::uint8_t> rgb; // highest row first
};

// None where there is no such file or it is no picture.
std::optional<StoredPicture> read_picture(const std::string& path);
bool write_picture(const std::string& path, const StoredPicture& picture);

// From pixels as OpenGL reads them: RGBA, lowest row first.
StoredPicture picture_of(const std::vector<std::uint8_t>& rgba, int width, int height);

// How far apart two pictures of one size are, in luminance from 0 to 255 (the weights of Rec. 709 on display values).
struct Apart {
    double mean = 0, percentile_99 = 0;
};
Apart apart(const StoredPicture& a, const StoredPicture& b);

// Eight times the difference about a middle grey, for looking at.
StoredPicture difference(const StoredPicture& a, const StoredPicture& b);

} // namespace spurwright::test
