#include "scenarios/commands/drawn_verbs.h"
#include "scenarios/commands/records_restore.h"
#include "scenarios/commands/verbs.h"

namespace spurwright::commands {

const std::vector<Verb>& all_verbs() {
    static const std::vector<Verb> verbs{job_verb(),  grow_verb(),    show_verb(),  prune_verb(),      judge_verb(),
                                         best_verb(), rules_verb(), sheet_verb(), acceptable_verb(), review_verb(), ahead_verb(), weigh_verb(), buds_verb(), vine_size_verb(), bud_kill_verb(), picture_verb(), turn_verb(), export_verb(), paper_verb(), quiz_make_verb(), audit_sheet_verb(), words_verb(), fingerprint_verb(),
                                         constants_verb(), variety_verb(), site_verb(), checks_verb(), crew_import_verb(), crew_list_verb(), crew_export_verb(), crew_show_verb(), crew_forget_verb(), crew_view_verb(), crew_sign_verb(), crew_unsign_verb(), crew_signed_verb(), crew_consent_verb(),
                                         records_export_verb(), records_replay_verb(), records_check_verb(), records_backup_verb(), records_restore_verb(), records_due_verb(), records_drop_verb(),
                                         book_block_verb(), book_import_verb(), book_list_verb(), book_export_verb(), book_compare_verb(), book_plot_verb(), book_sheet_verb(), book_suggest_verb(), book_history_verb(), book_undo_verb(), demo_block_verb()};
    return verbs;
}

} // namespace spurwright::commands
