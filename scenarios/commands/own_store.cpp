#include "scenarios/commands/own_store.h"

#include "scenarios/records/backup.h"
#include "scenarios/settings/folders.h"

namespace spurwright::commands {

Result<records::Store> own_store() {
    auto store = records::Store::open(settings::own_folders().store_file);
    if (!store) return store;
    if (auto copied = records::back_up_daily(*store, records::today()); !copied) return failure(copied.error());
    return store;
}

Result<std::optional<records::Store>> own_store_to_read() { return records::Store::open_to_read(settings::own_folders().store_file); }

} // namespace spurwright::commands
