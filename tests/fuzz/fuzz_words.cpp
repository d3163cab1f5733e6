// Word files: texts whose sentences can be made with and without their arguments, or a refusal.
#include "scenarios/words/words.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    auto file = words::read_word_file(fuzz::text(data, size), "fuzz");
    if (!file) return 0;
    const auto texts = file->texts;
    const words::Words words({*std::move(file)});
    for (const auto& [key, text] : texts) {
        Arguments arguments;
        const auto gaps = words::gaps_of(text);
        for (std::size_t i = 0; i < gaps.names.size(); ++i)
            arguments.push_back({gaps.names[i], i % 3 == 0   ? Argument(Length{static_cast<std::int32_t>(8'000 * i)})
                                                : i % 3 == 1 ? Argument(Count{static_cast<std::int64_t>(i)})
                                                             : Argument(TextKey{key})});
        static_cast<void>(words.sentence(TextKey{key}, arguments));
        static_cast<void>(words.sentence(TextKey{key}));
    }
    return 0;
}
