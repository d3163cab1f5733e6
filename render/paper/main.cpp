// The program `spurwright-paper`: the verbs that set type on paper or draw a plot. Sibling of `spurwright`, which hands them over; apart
// from the window, which needs no library of pages in its memory.
#include "render/paper/book_plot.h"
#include "render/paper/field_sheet.h"
#include "render/paper/school_verbs.h"
#include "render/paper/sheet_paper.h"
#include "scenarios/commands/compare_wish.h"
#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/own_store.h"
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

// The picture, and beside it the table of what it shows.
Result<commands::Answer> answer_book_plot(const commands::Asked& asked, const commands::Surroundings& around) {
    const std::string path = *asked.value("-o");
    if (!path.ends_with(".png")) return failure(commands::refusal(Fault::bad_text, "error.book.plot-kind", {{"text", path}}, "-o"));
    const auto wish = commands::compare_wish(asked);
    if (!wish) return failure(wish.error());
    auto store = commands::own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store) return failure(reference_vines::unknown_block(asked.subject, {}));
    auto book = reference_vines::book_of(**store, asked.subject, wish->row);
    if (!book) return failure(book.error());
    reference_vines::BlockBook& block = book->front();
    for (auto& vine : block.vines) reference_vines::keep_winters(vine, *wish);
    const auto compared = reference_vines::compare(block, *wish);
    if (compared.winters.empty()) return failure(commands::refusal(Fault::not_allowed, "error.book.nothing-weighed", {{"text", asked.subject}}, "book plot"));
    const std::string data = path.substr(0, path.size() - 4) + ".csv", picture = paper::book_plot(block, compared, *wish, around.words);
    if (picture.empty()) return failure(commands::refusal(Fault::missing, "error.book.cannot-draw", {}, "book plot"));
    if (auto written = io::write_file(data, paper::plot_data(block)); !written) return failure(written.error());
    if (auto written = io::write_file(path, picture); !written) return failure(written.error());
    commands::Answer done;
    done.object.set("file", path);
    done.object.set("data", data);
    done.object.set("block", block.block.name);
    done.object.set("width", paper::plot_width);
    done.object.set("height", paper::plot_height);
    done.text = around.words("book.plotted", {{"file", path}, {"data", data}}) + "\n";
    return done;
}

Result<commands::Answer> answer_book_sheet(const commands::Asked& asked, const commands::Surroundings& around) {
    auto store = commands::own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store) return failure(reference_vines::unknown_block(asked.subject, {}));
    const auto book = reference_vines::book_of(**store, asked.subject, asked.value("--row"));
    if (!book) return failure(book.error());
    const reference_vines::BlockBook& block = book->front();
    if (block.vines.empty()) {
        const auto row = asked.value("--row");
        return failure(row ? commands::refusal(Fault::unknown_part, "error.book.no-row", {{"text", *row}}, "--row")
                           : commands::refusal(Fault::not_allowed, "error.book.no-vines", {{"text", asked.subject}}, "book sheet"));
    }
    const auto other = words::load_words(around.assets, around.words.language() == "en" ? "es" : "en");
    if (!other) return failure(other.error());
    const paper::FieldSheet sheet = paper::field_sheet(block, around.words, *other);
    const std::string path = *asked.value("-o");
    if (auto written = io::write_file(path, sheet.bytes); !written) return failure(written.error());
    commands::Answer done;
    done.object.set("file", path);
    done.object.set("block", block.block.name);
    done.object.set("pages", sheet.pages);
    done.object.set("vines", static_cast<std::int64_t>(block.vines.size()));
    done.text = around.words("book.sheet-done", {{"file", path}, {"n", Count{sheet.pages}}}) + "\n";
    return done;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    std::vector<commands::Verb> verbs{commands::paper_verb(), commands::book_plot_verb(), commands::book_sheet_verb(), commands::quiz_make_verb(), commands::audit_sheet_verb()};
    verbs[0].answer = answer_paper;
    verbs[1].answer = answer_book_plot;
    verbs[2].answer = answer_book_sheet;
    verbs[3].answer = paper::answer_quiz_make;
    verbs[4].answer = paper::answer_audit_sheet;
    return commands::write_out(commands::run_command(arguments, verbs));
}
