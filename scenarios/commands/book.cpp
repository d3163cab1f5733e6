// book block, import, list, export, history, undo: the reference vines, in and out.
#include "scenarios/commands/formula_option.h"
#include "scenarios/commands/import_text.h"
#include "scenarios/commands/own_store.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/commands/verbs.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/records/act.h"
#include "scenarios/records/clock.h"
#include "scenarios/reference_vines/book_export.h"
#include "scenarios/reference_vines/book_file.h"
#include "scenarios/words/layout.h"

#include <algorithm>

namespace spurwright::commands {
namespace {

using namespace reference_vines;

Result<Book> book_kept(const std::optional<std::string>& block) {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    if (!*store && block) return failure(unknown_block(*block, {}));
    if (!*store) return Book();
    return book_of(**store, block);
}

Result<std::optional<Length>> length_asked(const Asked& asked, std::string_view option, double low_m, double high_m) {
    const auto text = asked.value(option);
    if (!text) return std::optional<Length>();
    const auto metres = read_metres(*text, option);
    if (!metres) return failure(metres.error());
    if (!(*metres >= low_m && *metres <= high_m))
        return failure(refusal(Fault::out_of_range, "error.value.range", {{"text", *text}, {"low", from_mm(1000 * low_m)}, {"high", from_mm(1000 * high_m)}}, std::string(option)));
    return std::optional(from_mm(1000 * *metres));
}

io::Json block_object(const Block& block) {
    io::Json o = io::Json::object();
    o.set("block", block.name);
    o.set("spacing_mm", block.spacing);
    o.set("rows_mm", block.rows ? io::Json(*block.rows) : io::Json());
    o.set("formula", block.formula.empty() ? io::Json() : io::Json(block.formula));
    o.set("invented", block.invented);
    return o;
}

Result<Answer> answer_block(const Asked& asked, const Surroundings& around) {
    const auto spacing = length_asked(asked, "--spacing", least_spacing_m, most_spacing_m);
    if (!spacing) return failure(spacing.error());
    const auto rows = length_asked(asked, "--rows", 0.5, 20);
    if (!rows) return failure(rows.error());
    const std::string formula = asked.value("--formula").value_or("");
    if (!formula.empty())
        if (const auto read = read_formula(formula); !read) return failure(read.error());
    const std::string& name = asked.subject;
    if (const auto named = may_be_named(name); !named) return failure(named.error());
    const auto book = book_kept(std::nullopt);
    if (!book) return failure(book.error());
    Block block;
    const auto there = std::find_if(book->begin(), book->end(), [&](const BlockBook& one) { return one.block.name == name; });
    if (there != book->end()) block = there->block;
    else if (!*spacing) return failure(refusal(Fault::bad_text, "error.option.missing", {{"option", std::string("--spacing L")}}, "book block"));
    block.name = name;
    if (*spacing) block.spacing = **spacing;
    if (*rows) block.rows = *rows;
    if (!formula.empty()) block.formula = formula;
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto act = records::Act::begin(*store, "book-block", records::utc_now());
    if (!act) return failure(act.error());
    if (auto done = put_block(*store, block); !done) return failure(done.error());
    if (auto done = (*act)->commit(); !done) return failure(done.error());
    Answer answer;
    answer.object = block_object(block);
    answer.text = around.words(there != book->end() ? "book.block-changed" : "book.block-new", {{"block", name}, {"spacing", block.spacing}}) + "\n";
    return answer;
}

io::Json odd_list(const std::vector<OddWeight>& odd) {
    io::Json list = io::Json::list();
    for (const OddWeight& one : odd) {
        io::Json o = io::Json::object();
        o.set("line", one.line);
        o.set("block", one.block);
        o.set("tag", one.tag);
        o.set("winter", one.winter);
        o.set("weight_g", one.prunings);
        o.set("usual_g", one.usual);
        o.set("against", one.of_vine ? "vine" : "block");
        list.push(std::move(o));
    }
    return list;
}

std::string odd_text(const std::vector<OddWeight>& odd, const words::Words& words) {
    constexpr std::size_t most_asked = 20; // on a console; our choice
    std::string text;
    for (std::size_t i = 0; i < odd.size() && i < most_asked; ++i)
        text += words::wrapped(words(odd[i].of_vine ? "book.odd-vine" : "book.odd-block", {{"line", std::to_string(odd[i].line)},
                                                                                        {"tag", odd[i].tag},
                                                                                        {"winter", std::to_string(odd[i].winter)},
                                                                                        {"weight", odd[i].prunings},
                                                                                        {"usual", odd[i].usual}}));
    if (odd.size() > most_asked) text += words("book.odd-more", {{"n", Count{static_cast<std::int64_t>(odd.size() - most_asked)}}}) + "\n";
    return text;
}

Result<Answer> answer_book_import(const Asked& asked, const Surroundings& around) {
    const auto text = io::read_file(asked.subject, largest_book_file);
    if (!text) return failure(text.error());
    const auto book = book_kept(std::nullopt);
    if (!book) return failure(book.error());
    const auto file = read_book_file(*text, asked.subject, *book, records::today());
    if (!file) return failure(file.error());
    const ImportWish wish = import_wish(asked);
    if (auto done = write_refused(wish, file->heading, file->refused); !done) return failure(done.error());
    const bool writes = wish.writes(file->refused.size());
    if (writes && file->counts.added + file->counts.changed > 0) {
        auto store = own_store();
        if (!store) return failure(store.error());
        if (auto done = take_in(*store, *book, *file, records::utc_now()); !done) return failure(done.error());
    }
    Answer answer;
    answer.object.set("file", asked.subject);
    answer.object.set("written", writes);
    answer.object.set("new", file->counts.added);
    answer.object.set("changed", file->counts.changed);
    answer.object.set("same", file->counts.same);
    answer.object.set("refused", refused_list(file->refused, around.words));
    answer.object.set("odd", odd_list(file->odd));
    answer.text = counts_text(file->counts, file->refused.size(), wish, around.words) + refused_text(file->refused, asked.subject, around.words) + odd_text(file->odd, around.words);
    answer.status = file->refused.empty() ? 0 : 2;
    return answer;
}

Result<Answer> answer_book_list(const Asked& asked, const Surroundings& around) {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    Result<std::vector<BlockCounts>> counts{};
    if (*store) counts = block_counts(**store);
    if (!counts) return failure(counts.error());
    const auto name = asked.value("--block");
    if (name) {
        Book names;
        for (const BlockCounts& one : *counts) names.push_back({one.block, {}});
        std::erase_if(*counts, [&](const BlockCounts& one) { return one.block.name != *name; });
        if (counts->empty()) return failure(unknown_block(*name, names));
    }
    Answer answer;
    io::Json blocks = io::Json::list();
    words::Table table;
    table.right = {false, true, true, true, true, true};
    std::vector<std::string> head;
    for (const std::string_view key : {"block", "vines", "weighings", "first", "last", "spacing"}) head.push_back(around.words("book." + std::string(key)));
    table.rows.push_back(std::move(head));
    for (const BlockCounts& one : *counts) {
        const bool weighed = one.weighings > 0;
        io::Json o = block_object(one.block);
        o.set("vines", one.vines);
        o.set("weighings", one.weighings);
        o.set("first_winter", weighed ? io::Json(one.first_winter) : io::Json());
        o.set("last_winter", weighed ? io::Json(one.last_winter) : io::Json());
        blocks.push(std::move(o));
        const std::string shown = one.block.invented ? around.words("book.invented", {{"block", one.block.name}}) : one.block.name;
        table.rows.push_back({shown, std::to_string(one.vines), std::to_string(one.weighings), weighed ? std::to_string(one.first_winter) : "-",
                              weighed ? std::to_string(one.last_winter) : "-", around.words.measure(one.block.spacing)});
    }
    answer.text = counts->empty() ? words::wrapped(around.words("book.empty")) : words::table_text(table);
    answer.object.set("blocks", std::move(blocks));
    return answer;
}

Result<Answer> answer_book_export(const Asked& asked, const Surroundings& around) {
    const std::string path = *asked.value("-o");
    const bool map = path.ends_with(".geojson");
    if (!map && !path.ends_with(".csv")) return failure(refusal(Fault::bad_text, "error.book.export-kind", {{"text", path}}, "-o"));
    const auto book = book_kept(asked.value("--block"));
    if (!book) return failure(book.error());
    const Exported out = map ? book_geojson(*book) : book_csv(*book);
    if (auto done = io::write_file(path, out.text); !done) return failure(done.error());
    Answer answer;
    answer.object.set("file", path);
    answer.object.set("written", out.written);
    answer.object.set("left_out", out.left_out);
    answer.text = words::wrapped(around.words(map ? "book.exported-map" : "book.exported", {{"written", Count{out.written}}, {"left", Count{out.left_out}}, {"file", path}}));
    return answer;
}

Result<Answer> answer_book_history(const Asked&, const Surroundings& around) {
    auto store = own_store_to_read();
    if (!store) return failure(store.error());
    Answer answer;
    io::Json acts = io::Json::list();
    words::Table table;
    table.right = {true, false, false, true};
    table.rows.push_back({around.words("book.act"), around.words("book.when"), around.words("book.what"), around.words("book.changes")});
    if (*store) {
        auto read = (*store)->each("SELECT id, when_utc, what, undoes, (SELECT count(*) FROM change WHERE change.act = act.id) FROM act WHERE what LIKE 'book-%' ORDER BY id DESC LIMIT 100", {}, 5,
                                   [&](const records::Row& row) {
                                       io::Json o = io::Json::object();
                                       o.set("act", row.whole(0));
                                       o.set("when_utc", row.text(1));
                                       o.set("what", row.text(2));
                                       o.set("undoes", row.null(3) ? io::Json() : io::Json(row.whole(3)));
                                       o.set("changes", row.whole(4));
                                       acts.push(std::move(o));
                                       const std::string what = around.words("history." + row.text(2));
                                       table.rows.push_back({row.text(0), row.text(1), row.null(3) ? what : around.words("book.undone", {{"what", what}, {"act", row.text(3)}}), row.text(4)});
                                   });
        if (!read) return failure(read.error());
    }
    answer.text = table.rows.size() == 1 ? words::wrapped(around.words("book.empty")) : words::table_text(table);
    answer.object.set("acts", std::move(acts));
    return answer;
}

Result<Answer> answer_book_undo(const Asked&, const Surroundings& around) {
    auto store = own_store();
    if (!store) return failure(store.error());
    const auto last = records::last_act(*store, "book-");
    if (!last) return failure(last.error());
    if (!*last) return failure(refusal(Fault::not_allowed, "error.book.nothing-to-undo", {}, "book undo"));
    if (auto done = records::undo(*store, **last, records::utc_now()); !done) return failure(done.error());
    Answer answer;
    answer.object.set("act", (*last)->number);
    answer.object.set("what", (*last)->what);
    answer.object.set("when_utc", (*last)->when_utc);
    answer.object.set("changes", (*last)->changes);
    answer.text = words::wrapped(around.words("book.taken-back", {{"what", around.words("history." + (*last)->what)}, {"when", (*last)->when_utc}, {"n", Count{(*last)->changes}}}));
    return answer;
}

} // namespace

Verb book_block_verb() {
    return {"book block", "NAME", TextKey{"verb.book-block"},
            {{"--spacing", "L", TextKey{"option.vine-spacing"}}, {"--rows", "L", TextKey{"option.block-rows"}}, {"--formula", "A+B", TextKey{"option.formula"}}},
            answer_block};
}
Verb book_import_verb() { return {"book import", "FILE.csv", TextKey{"verb.book-import"}, import_options(), answer_book_import}; }
Verb book_list_verb() { return {"book list", "", TextKey{"verb.book-list"}, {{"--block", "NAME", TextKey{"option.block"}}}, answer_book_list}; }
Verb book_export_verb() {
    return {"book export", "", TextKey{"verb.book-export"}, {{"-o", "FILE", TextKey{"option.book-output"}, true}, {"--block", "NAME", TextKey{"option.block"}}}, answer_book_export};
}
Verb book_history_verb() { return {"book history", "", TextKey{"verb.book-history"}, {}, answer_book_history}; }
Verb book_undo_verb() { return {"book undo", "", TextKey{"verb.book-undo"}, {}, answer_book_undo}; }

} // namespace spurwright::commands
