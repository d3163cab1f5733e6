#include "sim/rules/missing_piece.h"

namespace spurwright::rules {

bool tells_missing(const Finding& finding) {
    const std::string_view key = finding.said.key.name;
    return key == "rule.spur-row.missing" || key == "rule.end-cut.missing-spur" || finding.said.key == finding.rule->missing;
}

}  // namespace spurwright::rules
