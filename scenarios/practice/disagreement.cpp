#include "scenarios/practice/disagreement.h"

#include <fcntl.h>
#include <unistd.h>

#include "scenarios/io/json.h"
#include "sim/core/hash.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::practice {

std::string disagreement_line(const Practice& practice, const std::string& note) {
    io::Json o = io::Json::object();
    o.set("kind", "spurwright-disagreement");
    o.set("version", 1);
    o.set("vine_hash", hash_text(vine_hash(practice.start())));
    o.set("vine_code", practice.task().code.empty() ? io::Json() : io::Json(practice.task().code));
    o.set("plan", print_plan(practice.done()));
    o.set("rule_set_hash", hash_text(rules::rule_set_hash(practice.task().house)));
    o.set("rule_set_name", practice.task().house_name);
    o.set("judge_version", rules::judge_version);
    const auto& look = practice.look();
    const bool at_piece = look && look->current < look->walk.size();
    o.set("finding", at_piece ? io::Json(look->walk[look->current].key.name) : io::Json());
    o.set("note", note);
    return io::print_json_line(o);
}

Result<void> add_line(const std::string& path, const std::string& line) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
    const std::string whole = line + "\n";
    const bool written = file >= 0 && ::write(file, whole.data(), whole.size()) == static_cast<ssize_t>(whole.size()) && ::fsync(file) == 0;
    if (file >= 0) ::close(file);
    if (!written) return failure({Fault::cannot_write, {"screen.message.not-saved"}, {}, {path, 0, 0, 0}});
    return {};
}

}  // namespace spurwright::practice
