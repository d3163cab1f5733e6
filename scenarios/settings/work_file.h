// The work in progress: a vine and the acts on it, undone ones too, in one small file written after each act. Offered
// back at the next start. Schema: assets/schemas/work-4.json (version 1 has no number, 2 no reference vine, 3 no rung; all read still). Must not know:
// screens, marks.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/reference_vines/vine_target.h"
#include "sim/core/error.h"
#include "sim/pruning/plan.h"

namespace spurwright::settings {

inline constexpr std::string_view work_kind = "spurwright-work";
inline constexpr int work_version = 4;

struct Work {
    std::string code;   // of the vine; empty: `vine_file` holds it
    std::string vine_file;  // name beside the work file
    std::string scene;  // empty outside a scene
    std::optional<std::size_t> number{};  // of the scene's vine: then the scene grows it, whatever `code` says
    std::string house;  // name of the rule set
    std::optional<reference_vines::VineTarget> from_book{};  // whose weight sets the number of buds
    Plan plan;          // every act in the list
    std::optional<int> rung{};   // of the ladder, where the vine was opened on one
    std::vector<bool> shown{};   // act by act: done for the trainee; none: none
    std::size_t done = 0;  // of them; the rest are undone
    bool operator==(const Work&) const = default;
};

// Faults: bad_file, newer, and what parse_plan refuses.
[[nodiscard]] Result<Work> read_work(std::string_view text, const std::string& source);
std::string print_work(const Work& work);

// The work kept in a folder. Keeps nothing where the folder's name is empty.
class WorkFolder {
public:
    explicit WorkFolder(std::string folder) : folder_(std::move(folder)) {}
    bool keeps() const { return !folder_.empty(); }
    const std::string& folder() const { return folder_; }
    std::string present() const { return folder_ + "/present.json"; }
    std::string path(const std::string& name) const { return folder_ + "/" + name; }

    // None where there is none. A file that cannot be read is set aside under another name and refused.
    [[nodiscard]] Result<std::optional<Work>> load() const;
    [[nodiscard]] Result<void> save(const Work& work) const;
    // The person said no: kept under another name, so that nothing is deleted.
    void set_aside() const;
    void clear() const;  // finished and kept elsewhere, or nothing done yet

private:
    std::string folder_;
};

}  // namespace spurwright::settings
