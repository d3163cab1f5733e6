#include "scenarios/practice/book_desk.h"

#include <algorithm>

#include "scenarios/commands/formula_option.h"
#include "scenarios/commands/quantities.h"
#include "scenarios/io/safe_file.h"
#include "scenarios/records/act.h"
#include "scenarios/records/backup.h"
#include "scenarios/reference_vines/book_export.h"

namespace spurwright::practice {

using namespace reference_vines;

namespace {

Error desk_refusal(std::string_view key, Arguments arguments = {}) { return {Fault::not_allowed, TextKey{key}, std::move(arguments), {}}; }

// A cell as it was typed: quoted, so that a comma in it is no column's end, and no more, so that the reader refuses what it
// refuses in a file.
std::string cell_of(const std::string& typed) {
    std::string cell = "\"";
    for (const char c : typed) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
    return cell + "\"";
}

bool has_letter(const std::string& text) {
    return std::any_of(text.begin(), text.end(), [](unsigned char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c >= 0x80; });
}

// What the reader said of the one row that was typed.
Error refused_cell(const records::RefusedRow& row) {
    Arguments arguments = row.arguments;
    arguments.push_back({"reason", row.reason});
    arguments.push_back({"column", row.column});
    return {Fault::bad_text, TextKey{row.column.empty() ? "screen.book.refused-row" : "screen.book.refused"}, std::move(arguments), {}};
}

std::string_view history_key(const std::string& what) {
    if (what == "book-vine") return "history.book-vine";
    return what == "book-block" ? std::string_view("history.book-block") : std::string_view("history.book-import");
}

Result<records::Store> open_to_write(const std::string& path, const records::Day& today) {
    auto opened = records::Store::open(path);
    if (!opened) return opened;
    if (auto copied = records::back_up_daily(*opened, today); !copied) return failure(copied.error());
    return opened;
}

// The first vine in walking order that has no weight this winter; the first of all where each has one.
std::size_t first_to_key(const std::vector<ReferenceVine>& vines, int winter) {
    const auto at = std::find_if(vines.begin(), vines.end(), [&](const ReferenceVine& v) { return !BookDesk::weighed(v, winter); });
    return at == vines.end() ? 0 : static_cast<std::size_t>(at - vines.begin());
}

}  // namespace

BookDesk::BookDesk(std::string store_file, const records::Day& today)
    : path_(std::move(store_file)), today_(today), winter_(winter_of(today)), newest_(winter_of(today)) {}

const Weighing* BookDesk::weighed(const ReferenceVine& vine, int winter) {
    for (const Weighing& weighing : vine.winters)
        if (weighing.winter == winter) return &weighing;
    return nullptr;
}

std::size_t BookDesk::keyed() const {
    if (!open()) return 0;
    return static_cast<std::size_t>(std::count_if(open()->vines.begin(), open()->vines.end(), [&](const ReferenceVine& v) { return weighed(v, winter_); }));
}

Result<void> BookDesk::read() { return read_again(open() ? open()->block.name : std::string()); }

// What was worked out of it is old.
void BookDesk::changed_block() {
    comparison_.reset();
    suggestion_.reset();
    history_.reset();
}

const std::vector<VineChange>& BookDesk::history() const {
    static const std::vector<VineChange> none;
    if (!vine() || path_.empty()) return none;
    if (history_ && history_->first == vine()->id) return history_->second;
    history_.emplace(vine()->id, std::vector<VineChange>());
    auto reading = records::Store::open_to_read(path_);
    if (reading && *reading)
        if (auto read = vine_history(**reading, vine()->id)) history_->second = *std::move(read);
    return history_->second;
}

Result<void> BookDesk::read_again(const std::string& block) {
    changed_block();
    last_act_.reset();
    std::optional<records::Store> reading;
    records::Store* store = store_ ? &*store_ : nullptr;
    book_.clear();
    open_ = 0;
    if (!store && !path_.empty()) {
        auto opened = records::Store::open_to_read(path_);
        if (!opened) return failure(opened.error());
        reading = *std::move(opened);
        if (reading) store = &*reading;
    }
    if (!store) return {};
    auto book = book_of(*store);
    if (!book) return failure(book.error());
    book_ = *std::move(book);
    for (std::size_t i = 0; i < book_.size(); ++i)
        if (book_[i].block.name == block) open_ = i;
    if (open()) at_ = std::min(at_, open()->vines.size());
    const auto last = records::last_act(*store, "book-");
    if (!last) return failure(last.error());
    if (*last) last_act_ = (*last)->what;
    return {};
}

Result<records::Store*> BookDesk::store_to_write() {
    if (path_.empty()) return failure(desk_refusal("error.book.nothing-kept"));
    if (!store_) {
        auto opened = open_to_write(path_, today_);
        if (!opened) return failure(opened.error());
        store_ = *std::move(opened);
    }
    return &*store_;
}

const BlockComparison& BookDesk::comparison() const {
    if (comparison_) return *comparison_;
    BlockBook block = *open();
    CompareWish wish = wish_;
    wish.row = row_;
    if (row_) std::erase_if(block.vines, [&](const ReferenceVine& vine) { return vine.row != *row_; });
    comparison_ = compare(std::move(block), wish);
    return *comparison_;
}

const BlockSuggestion& BookDesk::suggestion() const {
    if (suggestion_) return *suggestion_;
    const std::string& own = open()->block.formula;
    const auto formula = commands::read_formula(own.empty() ? "20+20" : own);  // the usual one for vinifera [smith-2023]
    suggestion_ = suggest(*open(), formula ? *formula : balance::BudFormula{20, 20}, wish_.sizes);
    return *suggestion_;
}

Result<BookFile> BookDesk::entry_file(const desk::Enter& entry) const {
    const ReferenceVine* vine = this->vine() ? this->vine() : begun_vine();
    const auto heading = [&](std::string_view name, const std::string& typed) {
        return std::string(name) + (has_letter(typed) ? "" : "_" + std::string(word_of(unit_)));
    };
    std::string head = "block,tag,winter," + heading("weight", entry.weight) + ",canes,buds,note";
    std::string row = cell_of(open()->block.name) + "," + cell_of(vine->tag) + "," + std::to_string(winter_) + "," + cell_of(entry.weight) + "," + cell_of(entry.canes) + "," + cell_of(entry.buds) + "," + cell_of(entry.note);
    if (!entry.crop.empty()) {
        head += "," + heading("crop", entry.crop);
        row += "," + cell_of(entry.crop);
    }
    if (begun_vine() && vine == begun_vine()) {
        head += ",row,place";
        row += "," + cell_of(vine->row) + "," + (vine->place ? std::to_string(*vine->place) : "");
    }
    auto file = read_book_file(head + "\n" + row + "\n", "book", book_, today_);
    if (!file) return file;
    if (!file->refused.empty()) return failure(refused_cell(file->refused.front()));
    return file;
}

// The next vine in walking order; past the last where there is none.
void BookDesk::next_to_key() {
    begun_.reset();
    at_ = std::min(at_ + 1, open()->vines.size());
}

Result<std::optional<BookDesk::Told>> BookDesk::put_in(const BookFile& file) {
    auto store = store_to_write();
    if (!store) return failure(store.error());
    const std::string block = open()->block.name, tag = file.vines.front().vine.tag;
    if (auto done = take_in(**store, book_, file, records::utc_now()); !done) return failure(done.error());
    entered_ += file.counts.added + file.counts.changed;
    auto now = book_of(**store, block);  // of this block alone: the others are as they were
    if (!now) return failure(now.error());
    book_[open_] = std::move(now->front());
    changed_block();
    last_act_ = "book-import";
    for (std::size_t i = 0; i < open()->vines.size(); ++i)
        if (open()->vines[i].tag == tag) at_ = i;
    next_to_key();
    return std::optional<Told>();
}

// Where the vine at hand stands from now on: an act of its own.
Result<std::optional<BookDesk::Told>> BookDesk::put_vine_at(const ReferenceVine& stands) {
    if (stand_alike(stands, *vine())) return std::optional<Told>();
    auto store = store_to_write();
    if (!store) return failure(store.error());
    const std::string block = open()->block.name, tag = stands.tag;
    if (auto kept = keep_place(**store, open()->block.id, stands, records::utc_now()); !kept) return failure(kept.error());
    auto now = book_of(**store, block);
    if (!now) return failure(now.error());
    book_[open_] = std::move(now->front());
    changed_block();
    last_act_ = "book-vine";
    for (std::size_t i = 0; i < open()->vines.size(); ++i)
        if (open()->vines[i].tag == tag) at_ = i;  // another place is another turn in the walk
    return std::optional<Told>();
}

struct BookDesk::Taker {
    BookDesk& d;
    using Answer = Result<std::optional<Told>>;
    static Answer nothing() { return std::optional<Told>(); }

    Answer operator()(const desk::Open& a) {
        for (std::size_t i = 0; i < d.book_.size(); ++i) {
            if (d.book_[i].block.name != a.block) continue;
            d.open_ = i;
            d.at_ = first_to_key(d.book_[i].vines, d.winter_);
            d.begun_.reset();
            d.row_.reset();
            d.comparison_.reset();
            d.suggestion_.reset();
            d.page_ = BookPage::entry;
            return nothing();
        }
        return failure(unknown_block(a.block, d.book_));
    }
    Answer operator()(const desk::Page& a) {
        if (a.page == BookPage::blocks || d.open()) d.page_ = a.page;
        return nothing();
    }
    Answer operator()(const desk::Winter& a) {
        d.winter_ = std::clamp(d.winter_ + a.step, first_winter, d.newest_);
        return nothing();
    }
    Answer operator()(const desk::At& a) {
        if (!d.open()) return nothing();
        d.begun_.reset();
        d.at_ = std::min(a.vine, d.open()->vines.size());
        if (d.page_ == BookPage::map) d.page_ = BookPage::entry;  // pointed at there, it is gone to
        return nothing();
    }
    Answer operator()(const desk::Walk& a) {
        if (!d.open()) return nothing();
        const auto last = static_cast<std::int64_t>(d.open()->vines.size());
        return (*this)(desk::At{static_cast<std::size_t>(std::clamp<std::int64_t>(static_cast<std::int64_t>(d.at_) + a.step, 0, last))});
    }
    Answer operator()(const desk::Tag& a) {
        if (!d.open()) return nothing();
        for (std::size_t i = 0; i < d.open()->vines.size(); ++i)
            if (d.open()->vines[i].tag == a.tag) return (*this)(desk::At{i});
        return failure(desk_refusal("error.book.no-tag", {{"text", a.tag}}));
    }
    // All rows, then one after another.
    Answer operator()(const desk::Row& a) {
        if (!d.open()) return nothing();
        std::vector<std::optional<std::string>> rows{std::nullopt};
        for (const ReferenceVine& vine : d.open()->vines)
            if (!rows.back() || *rows.back() != vine.row) rows.emplace_back(vine.row);
        const auto at = std::find(rows.begin(), rows.end(), d.row_) - rows.begin(), n = static_cast<std::ptrdiff_t>(rows.size());
        d.row_ = rows[static_cast<std::size_t>(((at + a.step) % n + n) % n)];
        d.comparison_.reset();
        return nothing();
    }
    Answer operator()(const desk::Unit& a) {
        d.unit_ = a.unit;
        return nothing();
    }
    Answer operator()(const desk::Enter& a) {
        if (!d.open() || (!d.vine() && !d.begun_vine())) return nothing();
        auto file = d.entry_file(a);
        if (!file) return failure(file.error());
        if (file->counts.added + file->counts.changed == 0) {  // as it stands
            d.next_to_key();
            return nothing();
        }
        if (file->odd.empty()) return d.put_in(*file);
        d.odd_ = file->odd.front();
        d.waits_ = *std::move(file);
        return nothing();
    }
    Answer operator()(const desk::Keep& a) {
        if (!d.waits_) return nothing();
        const BookFile file = *std::exchange(d.waits_, std::nullopt);
        d.odd_.reset();
        if (!a.yes) return nothing();
        return d.put_in(file);
    }
    Answer operator()(const desk::TakeBack&) {
        auto store = d.store_to_write();
        if (!store) return failure(store.error());
        const auto last = records::last_act(**store, "book-");
        if (!last) return failure(last.error());
        if (!*last) return failure(desk_refusal("error.book.nothing-to-undo"));
        if (auto done = records::undo(**store, **last, records::utc_now()); !done) return failure(done.error());
        const std::string block = d.open() ? d.open()->block.name : std::string();
        if (auto read = d.read_again(block); !read) return failure(read.error());
        ++d.entered_;  // what stands in the fields is another
        if (d.at_ > 0 && d.page_ == BookPage::entry) --d.at_;  // the weight taken back is the next to be keyed
        if ((*last)->changes == 1 && d.page_ == BookPage::entry) return nothing();  // seen where it stood: no words in the way of the next
        return Told{TextKey{"book.taken-back"}, {{"what", TextKey{history_key((*last)->what)}}, {"when", (*last)->when_utc}, {"n", Count{(*last)->changes}}}};
    }
    Answer operator()(const desk::NewBlock& a) {
        if (auto named = may_be_named(a.name); !named) return failure(named.error());
        const auto metres = commands::read_metres(a.spacing, "spacing");
        if (!metres) return failure(metres.error());
        if (!(*metres >= least_spacing_m && *metres <= most_spacing_m))
            return failure({Fault::out_of_range, TextKey{"error.value.range"}, {{"text", a.spacing}, {"low", from_mm(1000 * least_spacing_m)}, {"high", from_mm(1000 * most_spacing_m)}}, {}});
        if (std::any_of(d.book_.begin(), d.book_.end(), [&](const BlockBook& one) { return one.block.name == a.name; })) return (*this)(desk::Open{a.name});
        auto store = d.store_to_write();
        if (!store) return failure(store.error());
        const auto act = records::Act::begin(**store, "book-block", records::utc_now());
        if (!act) return failure(act.error());
        Block block;
        block.name = a.name;
        block.spacing = from_mm(1000 * *metres);
        if (auto done = put_block(**store, block); !done) return failure(done.error());
        if (auto done = (*act)->commit(); !done) return failure(done.error());
        if (auto read = d.read_again(a.name); !read) return failure(read.error());
        return (*this)(desk::Open{a.name});
    }
    Answer operator()(const desk::NewVine& a) {
        if (!d.open()) return nothing();
        if (a.tag.empty()) return failure(desk_refusal("error.book.tag-missing"));
        for (std::size_t i = 0; i < d.open()->vines.size(); ++i)
            if (d.open()->vines[i].tag == a.tag) return (*this)(desk::At{i});
        ReferenceVine vine;
        vine.tag = a.tag;
        vine.row = a.row;
        if (!a.place.empty()) {
            const auto place = commands::read_whole(a.place, "place", 1, 100'000);
            if (!place) return failure(place.error());
            vine.place = *place;
        }
        d.at_ = d.open()->vines.size();
        d.begun_ = std::move(vine);
        return nothing();
    }
    Answer operator()(const desk::Placed& a) {
        if (!d.vine()) return failure(desk_refusal("error.book.no-vine-at-hand"));
        const auto stands = stand_at(*d.vine(), {a.row, a.place, a.latitude, a.longitude});
        if (!stands) return failure(stands.error());
        return d.put_vine_at(*stands);
    }
    Answer operator()(const desk::PutAt& a) {
        if (!d.vine()) return failure(desk_refusal("error.book.no-vine-at-hand"));
        ReferenceVine stands = *d.vine();
        stands.latitude_e7 = a.latitude_e7;
        stands.longitude_e7 = a.longitude_e7;
        return d.put_vine_at(stands);
    }
    Answer operator()(const desk::Nudge& a) {
        if (!d.vine()) return failure(desk_refusal("error.book.no-vine-at-hand"));
        const ReferenceVine& vine = *d.vine();
        const auto from = vine.latitude_e7 && vine.longitude_e7 ? std::optional(MapPoint{*vine.latitude_e7, *vine.longitude_e7}) : middle_point(d.open()->vines);
        if (!from) return failure(desk_refusal("error.book.no-point"));
        const MapPoint to = moved(*from, {a.north_m, a.east_m});
        return (*this)(desk::PutAt{to.latitude_e7, to.longitude_e7});
    }
    Answer operator()(const desk::ReadIn& a) {
        if (d.preview_ && d.preview_->path == a.path && d.previewed_) {
            if (d.path_.empty()) return failure(desk_refusal("error.book.nothing-kept"));
            d.take_in_seen();
        } else {
            d.look_into(a.path);
        }
        return nothing();
    }
    Answer operator()(const desk::WriteOut& a) {
        const bool map = a.path.ends_with(".geojson");
        if (!map && !a.path.ends_with(".csv")) return failure({Fault::bad_text, TextKey{"error.book.export-kind"}, {{"text", a.path}}, {}});
        const Exported out = map ? book_geojson(d.book_) : book_csv(d.book_);
        if (auto done = io::write_file(a.path, out.text); !done) return failure(done.error());
        return Told{TextKey{map ? "book.exported-map" : "book.exported"}, {{"written", Count{out.written}}, {"left", Count{out.left_out}}, {"file", a.path}}};
    }
    Answer operator()(const desk::Demo&) {
        if (d.demo_) return nothing();
        if (d.path_.empty()) return failure(desk_refusal("error.book.nothing-kept"));
        DemoWish wish;
        wish.last_winter = d.newest_;
        d.demo_ = std::make_unique<Worker<Result<DemoBlock>>>();
        d.demo_->ask([wish] { return demo_block(wish); });
        return nothing();
    }
};

Result<std::optional<BookDesk::Told>> BookDesk::take(const BookAct& act) {
    if (taking_in()) return failure(desk_refusal("error.book.taking-in"));
    errand_.reset();  // who does something else does not wait for what was looked into
    const bool answers = std::holds_alternative<desk::Keep>(act);
    if (!answers) {  // whatever else is done, the weight in question is not kept
        odd_.reset();
        waits_.reset();
    }
    if (!std::holds_alternative<desk::ReadIn>(act)) {  // what a file would do is said of the book as it was
        preview_.reset();
        previewed_.reset();
    }
    return std::visit(Taker{*this}, act);
}

Result<void> BookDesk::put_demo_in(const DemoBlock& demo) {
    auto store = store_to_write();
    if (!store) return failure(store.error());
    const auto file = take_in_block(**store, demo.block, demo.csv, "demo-block", today_, records::utc_now());
    if (!file) return failure(file.error());
    if (auto read = read_again(demo.block.name); !read) return read;
    page_ = BookPage::compare;
    at_ = 0;
    begun_.reset();
    row_.reset();
    ++entered_;
    return {};
}

void BookDesk::look_into(const std::string& file) {
    preview_.reset();
    previewed_.reset();
    errand_ = std::make_unique<Errand>();
    errand_->path = file;
    errand_->worker.ask([file, book = book_, today = today_]() -> Result<BookFile> {
        const auto text = io::read_file(file, largest_book_file);
        if (!text) return failure(text.error());
        return read_book_file(*text, file, book, today);
    });
}

void BookDesk::take_in_seen() {
    errand_ = std::make_unique<Errand>();
    errand_->path = preview_->path;
    errand_->takes_in = true;
    preview_.reset();
    store_.reset();  // a store is of one thread
    errand_->worker.ask([path = path_, file = *std::exchange(previewed_, std::nullopt), book = book_, today = today_]() -> Result<BookFile> {
        auto store = open_to_write(path, today);
        if (!store) return failure(store.error());
        if (auto done = take_in(*store, book, file, records::utc_now()); !done) return failure(done.error());
        return file;
    });
}

void BookDesk::back_from(const Errand& errand, Result<BookFile> file) {
    if (!file) {
        said_ = failure(file.error());
    } else if (!errand.takes_in) {
        preview_ = FilePreview{errand.path, file->counts, file->refused, file->odd};
        previewed_ = *std::move(file);
    } else {
        const std::int64_t rows = file->counts.added + file->counts.changed;
        entered_ += rows;
        said_ = Told{TextKey{"screen.book.read-in"}, {{"n", Count{rows}}, {"path", errand.path}}};
        if (auto read = read_again(open() ? open()->block.name : std::string()); !read) said_ = failure(read.error());
    }
}

bool BookDesk::poll() {
    if (errand_)
        if (auto file = errand_->worker.take()) {
            const auto done = std::exchange(errand_, nullptr);
            back_from(*done, *std::move(file));
            return true;
        }
    if (!demo_) return false;
    const auto made = demo_->take();
    if (!made) return false;
    demo_.reset();
    if (!*made) said_ = failure(made->error());
    else if (auto put = put_demo_in(**made); !put) said_ = failure(put.error());
    return true;
}

std::optional<Result<BookDesk::Told>> BookDesk::said() { return std::exchange(said_, std::nullopt); }

}  // namespace spurwright::practice
