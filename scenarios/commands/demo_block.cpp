// demo-block: an invented block over eight winters, put into the book by the way every file takes.
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/reference_vines/book_file.h"
#include "scenarios/reference_vines/demo_block.h"
#include "scenarios/words/layout.h"

namespace spurwright::commands {
namespace {

using namespace reference_vines;

Result<Answer> answer_demo_block(const Asked& asked, const Surroundings& around) {
    DemoWish wish;
    if (const auto text = asked.value("--seed")) {
        const auto seed = read_whole(*text, "--seed", 0, 1'000'000'000);
        if (!seed) return failure(seed.error());
        wish.seed = static_cast<std::uint64_t>(*seed);
    }
    wish.last_winter = winter_of(records::today());
    if (around.progress) wish.progress = around.progress;
    const auto demo = demo_block(wish);
    if (!demo) return failure(demo.error());
    const auto path = asked.value("-o");
    if (path)
        if (auto done = io::write_file(*path, demo->csv); !done) return failure(done.error());
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto file = take_in_block(*store, demo->block, demo->csv, path.value_or("demo-block"), records::today(), records::utc_now());
    if (!file) return failure(file.error());
    Answer answer;
    answer.object.set("block", demo->block.name);
    answer.object.set("invented", true);
    answer.object.set("seed", wish.seed);
    answer.object.set("vines", demo_vines);
    answer.object.set("winters", demo_winters);
    answer.object.set("new", file->counts.added);
    answer.object.set("changed", file->counts.changed);
    answer.object.set("same", file->counts.same);
    answer.object.set("refused", static_cast<std::int64_t>(file->refused.size()));
    answer.object.set("file", path ? io::Json(*path) : io::Json());
    answer.text = words::wrapped(around.words("book.demo", {{"block", demo->block.name}, {"vines", Count{demo_vines}}, {"winters", Count{demo_winters}}})) + words::wrapped(around.words("book.invented-line")) +
                  words::wrapped(around.words("book.demo-next", {{"block", demo->block.name}}));
    return answer;
}

} // namespace

Verb demo_block_verb() {
    return {"demo-block", "", TextKey{"verb.demo-block"}, {{"--seed", "N", TextKey{"option.demo-seed"}}, {"-o", "FILE", TextKey{"option.demo-output"}}}, answer_demo_block};
}

} // namespace spurwright::commands
