// Runs a fuzzer's function over every file of the folders named, and over each of them cut short in 64 places: what
// any compiler can test without libFuzzer. Fails where there was no file.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "tests/fuzz/fuzz.h"

int main(int argc, char** argv) {
    int files = 0;
    for (int i = 1; i < argc; ++i)
        for (const auto& entry : std::filesystem::directory_iterator(argv[i])) {
            std::ifstream file(entry.path(), std::ios::binary);
            std::ostringstream text;
            text << file.rdbuf();
            const std::string bytes = text.str();
            const auto run = [&](std::size_t size) {
                LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), size);
            };
            run(bytes.size());
            for (std::size_t part = 0; part < 64; ++part) run(bytes.size() * part / 64);
            ++files;
        }
    std::printf("%d files of the corpus\n", files);
    return files > 0 ? 0 : 1;
}
