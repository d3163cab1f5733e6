// Every verb's record. One verb, one file; the list that the help and the command line read is verb_list.cpp.
#pragma once

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

Verb grow_verb();
Verb show_verb();
Verb prune_verb();
Verb judge_verb();
Verb best_verb();
Verb weigh_verb();
Verb fingerprint_verb();
Verb words_verb();
Verb job_verb();
Verb constants_verb();
Verb checks_verb();
Verb ahead_verb();
Verb buds_verb();
Verb vine_size_verb();
Verb bud_kill_verb();
Verb rules_verb();
Verb acceptable_verb();
Verb review_verb();
Verb sheet_verb();
Verb variety_verb();
Verb site_verb();
Verb crew_import_verb();
Verb crew_list_verb();
Verb crew_export_verb();
Verb crew_show_verb();
Verb crew_forget_verb();
Verb crew_view_verb();
Verb crew_sign_verb();
Verb crew_unsign_verb();
Verb crew_signed_verb();
Verb crew_consent_verb();
Verb records_export_verb();
Verb records_replay_verb();
Verb records_check_verb();
Verb records_backup_verb();
Verb records_due_verb();
Verb records_drop_verb();
Verb book_block_verb();
Verb book_import_verb();
Verb book_list_verb();
Verb book_export_verb();
Verb book_compare_verb();
Verb book_suggest_verb();
Verb book_history_verb();
Verb book_undo_verb();
Verb demo_block_verb();

} // namespace spurwright::commands
