// Any vine a file can hold may be shown, pruned, weighed, judged and searched: nothing of it may fall over. First line
// of the input: a plan; the rest: a vine file.
#include <algorithm>

#include "scenarios/commands/judged.h"
#include "scenarios/commands/vine_answer.h"
#include "scenarios/words/load_words.h"
#include "sim/core/check.h"
#include "sim/pruning/prunings.h"
#include "tests/fuzz/fuzz.h"

using namespace spurwright;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text = fuzz::text(data, size);
    const std::size_t line = std::min(text.find('\n'), text.size());
    const auto file = io::read_vine_file(text.substr(std::min(line + 1, text.size())), "fuzz");
    if (!file || file->vine.nodes.size() > 400) return 0; // small ones are quick; width is the property tests' matter
    static const words::Words words = words::bare_words();
    static_cast<void>(commands::vine_answer({file->vine, "", {}}, words));
    const auto pruned = commands::prune_by_text(file->vine, std::string(text.substr(0, line)));
    if (!pruned) return 0;
    static_cast<void>(prunings(file->vine, pruned->after));
    if (!commands::can_be_judged(file->vine, "fuzz")) return 0;
    const rules::HouseRules house;
    const planning::Planning planning(file->vine, house);
    const auto judged = commands::judged(file->vine, pruned->plan, house, planning);
    SPURWRIGHT_CHECK(judged.has_value(), ==, true);
    if (judged->best) SPURWRIGHT_CHECK(judged->judgement.points.count, <=, judged->best->count);
    return 0;
}
