#include "scenarios/commands/own_store.h"

#include "scenarios/records/backup.h"
#include "scenarios/settings/folders.h"

namespace spurwright::commands {

Result<records::Store> own_store() {
    return records::open_backed_up(settings::own_folders().store_file, records::today());
}

Result<std::optional<records::Store>> own_store_to_read() { return records::Store::open_to_read(settings::own_folders().store_file); }

} // namespace spurwright::commands
