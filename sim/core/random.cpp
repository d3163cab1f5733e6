#include "sim/core/random.h"

#include "sim/core/numeric.h"

namespace spurwright {

double normal(std::uint64_t bits) { return numeric::normal_quantile(unit(bits)); }

}  // namespace spurwright
