#include "scenarios/commands/house_rules_option.h"

namespace spurwright::commands {

Result<io::HouseRulesFile> house_rules_asked(const Asked& asked, const Surroundings& around, System system) {
    return io::load_house_rules(asked.value("--rules").value_or(system == System::cordon ? "spur-cordon" : "general"),
                                around.assets);
}

VerbOption rules_option() { return {"--rules", "NAME|FILE", TextKey{"option.rules"}}; }

} // namespace spurwright::commands
