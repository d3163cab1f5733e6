#include "scenarios/records/answer.h"

namespace spurwright::records {

std::string program_version() { return SPURWRIGHT_VERSION; }

} // namespace spurwright::records
