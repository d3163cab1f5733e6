// The book of reference vines in the window: the block that lies open, the vine whose weight comes next in walking order,
// what was asked about a weight that stands apart. Every weight goes in by the way a file does (read_book_file), so that
// what is refused, asked and undone is the same. Must not know: screens, pictures.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "scenarios/practice/book_acts.h"
#include "scenarios/practice/worker.h"
#include "scenarios/reference_vines/book_file.h"
#include "scenarios/reference_vines/compare.h"
#include "scenarios/reference_vines/demo_block.h"
#include "scenarios/reference_vines/suggest.h"
#include "scenarios/reference_vines/vine_history.h"
#include "scenarios/reference_vines/vine_place.h"

namespace spurwright::practice {

// What a file would do to the book.
struct FilePreview {
    std::string path;
    records::ImportCounts counts;
    std::vector<records::RefusedRow> refused;
    std::vector<reference_vines::OddWeight> odd;
};

class BookDesk {
public:
    // `store_file`: the records; empty: nothing can be kept. No file is made before the first act that changes the book.
    BookDesk(std::string store_file, const records::Day& today);

    // Reads it anew; a fault is to be said, and the book is then empty.
    [[nodiscard]] Result<void> read();

    BookPage page() const { return page_; }
    const reference_vines::Book& book() const { return book_; }
    const reference_vines::BlockBook* open() const { return open_ < book_.size() ? &book_[open_] : nullptr; }
    int winter() const { return winter_; }
    int newest_winter() const { return newest_; }
    WeightUnit unit() const { return unit_; }
    // In walking order; the number of vines: past the last, where a new one may be keyed.
    std::size_t at() const { return at_; }
    const reference_vines::ReferenceVine* vine() const { return open() && at_ < open()->vines.size() ? &open()->vines[at_] : nullptr; }
    const reference_vines::ReferenceVine* begun_vine() const { return begun_ ? &*begun_ : nullptr; }  // new, with no weight yet
    // Of the vine in that winter; null where there is none.
    static const reference_vines::Weighing* weighed(const reference_vines::ReferenceVine& vine, int winter);
    std::size_t keyed() const;  // vines of the open block with a weight this winter

    const std::optional<reference_vines::OddWeight>& odd() const { return odd_; }  // waits for Keep
    const std::optional<FilePreview>& preview() const { return preview_; }         // waits for ReadIn of the same path
    bool can_take_back() const { return last_act_.has_value(); }
    const std::string& last_act() const { return *last_act_; }  // its word in the history
    bool making_demo() const { return demo_ != nullptr; }
    bool reading() const { return errand_ && !errand_->takes_in; }  // a file is looked into
    bool taking_in() const { return errand_ && errand_->takes_in; } // meanwhile nothing else is done in the book
    bool works() const { return demo_ || errand_; }                 // an answer is due
    std::int64_t entered() const { return entered_; }  // weights kept since the book was opened

    // Of the open block; worked out when it is first asked for after a change.
    const reference_vines::BlockComparison& comparison() const;
    const std::optional<std::string>& compared_row() const { return row_; }
    const reference_vines::BlockSuggestion& suggestion() const;
    // What was changed of the vine at hand, the newest first; read when it is first asked for after a change.
    const std::vector<reference_vines::VineChange>& history() const;
    const reference_vines::CompareWish& wish() const { return wish_; }

    // Faults: what the book's own functions refuse. Told: a sentence, where something is to be said besides.
    struct Told {
        TextKey key;
        Arguments arguments;
    };
    [[nodiscard]] Result<std::optional<Told>> take(const BookAct& act);
    // The invented block made, a file looked into or taken in; true where anything changed. What is to be said of it, or its
    // fault, is in `said()`, once.
    bool poll();
    std::optional<Result<Told>> said();

private:
    struct Taker;
    // A file of the book in a worker's hands: 100,000 rows take half a second to read and two to take in.
    struct Errand {
        std::string path;
        bool takes_in = false;
        Worker<Result<reference_vines::BookFile>> worker;
    };

    std::string path_;
    records::Day today_;
    std::optional<records::Store> store_;
    reference_vines::Book book_;
    std::size_t open_ = 0, at_ = 0;
    BookPage page_{};
    int winter_ = 0, newest_ = 0;
    WeightUnit unit_{};
    std::optional<reference_vines::ReferenceVine> begun_;
    std::optional<reference_vines::OddWeight> odd_;
    std::optional<reference_vines::BookFile> waits_;  // with it
    std::optional<FilePreview> preview_;
    std::optional<reference_vines::BookFile> previewed_;
    std::optional<std::string> last_act_;
    std::optional<Result<Told>> said_;
    std::int64_t entered_ = 0;
    std::optional<std::string> row_;
    reference_vines::CompareWish wish_;
    mutable std::optional<reference_vines::BlockComparison> comparison_;
    mutable std::optional<reference_vines::BlockSuggestion> suggestion_;
    mutable std::optional<std::pair<std::int64_t, std::vector<reference_vines::VineChange>>> history_;  // of the vine of that id
    std::unique_ptr<Worker<Result<reference_vines::DemoBlock>>> demo_;
    std::unique_ptr<Errand> errand_;

    [[nodiscard]] Result<records::Store*> store_to_write();
    [[nodiscard]] Result<void> read_again(const std::string& block);
    [[nodiscard]] Result<std::optional<Told>> put_in(const reference_vines::BookFile& file);
    [[nodiscard]] Result<reference_vines::BookFile> entry_file(const desk::Enter& entry) const;
    void look_into(const std::string& file);
    void take_in_seen();
    void back_from(const Errand& errand, Result<reference_vines::BookFile> file);
    [[nodiscard]] Result<void> put_demo_in(const reference_vines::DemoBlock& demo);
    void next_to_key();
    void changed_block();
    [[nodiscard]] Result<std::optional<Told>> put_vine_at(const reference_vines::ReferenceVine& stands);
};

}  // namespace spurwright::practice
