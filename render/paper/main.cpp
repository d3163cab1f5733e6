// The program `spurwright-paper`: the verbs that set type on paper. Sibling of `spurwright`, which hands them over; apart
// from the window, which needs no library of pages in its memory.
#include "render/paper/sheet_paper.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/write_out.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/words/load_words.h"

namespace {

using namespace spurwright;

Result<commands::Answer> answer_paper(const commands::Asked& asked, const commands::Surroundings& around) {
    const auto read = sheet::load_block_sheet(asked.subject);
    if (!read) return failure(read.error());
    const auto other = words::load_words(around.assets, around.words.language() == "en" ? "es" : "en");
    if (!other) return failure(other.error());
    const auto bytes = paper::sheet_pdf(*read, around.words, *other);
    if (!bytes) return failure(bytes.error());
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, *bytes); !written) return failure(written.error());
    commands::Answer done;
    done.object.set("file", path);
    done.object.set("block", read->block);
    done.text = around.words("paper.done", {{"file", path}}) + "\n";
    return done;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    std::vector<commands::Verb> verbs{commands::paper_verb()};
    verbs[0].answer = answer_paper;
    return commands::write_out(commands::run_command(arguments, verbs));
}
