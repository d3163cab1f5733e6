#include "scenarios/commands/formula_option.h"

#include <charconv>

#include "scenarios/commands/verb.h"

namespace spurwright::commands {

Result<balance::BudFormula> read_formula(const std::string& text) {
    const Error bad = refusal(Fault::bad_text, "error.value.formula", {{"text", text}}, "--formula");
    balance::BudFormula formula;
    const char* const end = text.data() + text.size();
    const auto first = std::from_chars(text.data(), end, formula.first);
    if (first.ec != std::errc{} || first.ptr == end || *first.ptr != '+') return failure(bad);
    const auto further = std::from_chars(first.ptr + 1, end, formula.further);
    if (further.ec != std::errc{} || further.ptr != end) return failure(bad);
    for (const double part : {formula.first, formula.further})
        if (!(part >= 0 && part <= 200)) return failure(bad);
    return formula;
}

} // namespace spurwright::commands
