#include "scenarios/io/json.h"

#include <charconv>
#include <cmath>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>

namespace spurwright::io {
namespace {

constexpr std::size_t widest_line = 120;

// Walks the bytes and tells the handler below how far the library's reader has come.
struct Counting {
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    const char* at;
    const char** seen;

    reference operator*() const { return *at; }
    Counting& operator++() {
        ++at;
        if (seen) *seen = at;
        return *this;
    }
    Counting operator++(int) {
        Counting before = *this;
        ++*this;
        return before;
    }
    bool operator==(const Counting& other) const { return at == other.at; }
    bool operator!=(const Counting& other) const { return at != other.at; }
};

Error refusal(std::string_view key, Arguments arguments, const std::string& source, int line, int column) {
    return {Fault::bad_file, TextKey{key}, std::move(arguments), {source, line, column, 0}};
}

// Builds the tree from the library's events; stops at the first thing this program refuses.
class Builder : public nlohmann::json_sax<nlohmann::json> {
public:
    Builder(std::string_view text, const std::string& source)
        : begin_(text.data()), end_(text.data() + text.size()), seen(begin_), source_(source), from_(begin_),
          line_start_(begin_), counted_(begin_) {}

    const char* begin_;
    const char* end_;
    const char* seen;
    Json root;
    std::optional<Error> refused;

    bool null() override { return put({}); }
    bool boolean(bool value) override { return put(Json(value)); }
    bool number_integer(number_integer_t value) override { return put_number(std::to_string(value)); }
    bool number_unsigned(number_unsigned_t value) override { return put_number(std::to_string(value)); }
    bool number_float(number_float_t, const string_t& text) override { return put_number(text); }
    bool string(string_t& text) override { return put(Json(std::move(text))); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(Json::object()); }
    bool start_array(std::size_t) override { return open(Json::list()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t& text) override {
        find_start();
        if (!keys_.back().insert(text).second) return refuse("error.json.twice", {{"key", text}});
        open_.back()->keys.push_back(std::move(text));
        from_ = seen;
        return true;
    }
    bool parse_error(std::size_t position, const std::string& token,
                     const nlohmann::detail::exception& fault) override {
        const char* at =
            begin_ + std::min<std::size_t>(position > 0 ? position - 1 : 0, static_cast<std::size_t>(end_ - begin_));
        from_ = std::max(from_, std::min(at, end_));
        place(from_);
        if (fault.id == 406) return refuse("error.json.number", {{"text", shortened(token)}});
        if (position > static_cast<std::size_t>(end_ - begin_)) return refuse("error.json.ends-early", {});
        const std::string_view what = fault.what();
        if (what.find("UTF-8") != std::string_view::npos) return refuse("error.json.not-utf8", {});
        return refuse("error.json.not-json", {});
    }

private:
    std::string source_;
    const char* from_; // where the last token ended
    const char* line_start_;
    const char* counted_; // line ends are counted up to here
    int line_ = 1, column_ = 1;
    std::vector<Json*> open_;
    std::vector<std::set<std::string>> keys_;
    std::size_t values_ = 0;

    static std::string shortened(const std::string& token) {
        return token.size() <= 40 ? token : token.substr(0, 40) + "...";
    }

    void place(const char* at) {
        for (; counted_ < at; ++counted_)
            if (*counted_ == '\n') {
                ++line_;
                line_start_ = counted_ + 1;
            }
        column_ = static_cast<int>(at - line_start_) + 1;
    }
    void find_start() {
        while (from_ < end_ &&
               (*from_ == ' ' || *from_ == '\n' || *from_ == '\r' || *from_ == '\t' || *from_ == ',' || *from_ == ':'))
            ++from_;
        place(from_);
    }
    bool refuse(std::string_view key, Arguments arguments) {
        if (!refused) refused = refusal(key, std::move(arguments), source_, line_, column_);
        return false;
    }
    Json* add(Json value) {
        find_start();
        value.line = line_;
        value.column = column_;
        if (++values_ > most_json_values) {
            refuse("error.json.too-many", {{"most", Count{static_cast<std::int64_t>(most_json_values)}}});
            return nullptr;
        }
        from_ = seen;
        if (open_.empty()) {
            root = std::move(value);
            return &root;
        }
        open_.back()->items.push_back(std::move(value));
        return &open_.back()->items.back();
    }
    bool put(Json value) { return add(std::move(value)) != nullptr; }
    bool put_number(std::string text) {
        Json value;
        value.kind = Json::Kind::number;
        const std::size_t length = text.size();
        value.text = std::move(text);
        if (!add(std::move(value))) return false;
        if (seen < end_ || length == 0) --from_; // the reader looks one character past a number
        return true;
    }
    bool open(Json value) {
        Json* opened = add(std::move(value));
        if (!opened) return false;
        if (open_.size() >= static_cast<std::size_t>(deepest_json))
            return refuse("error.json.too-deep", {{"most", Count{deepest_json}}});
        open_.push_back(opened);
        keys_.emplace_back();
        return true;
    }
    bool close() {
        open_.pop_back();
        keys_.pop_back();
        from_ = seen;
        return true;
    }
};

std::string quoted(const std::string& text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

void print_flat(const Json& value, std::string& out) {
    switch (value.kind) {
    case Json::Kind::null: out += "null"; return;
    case Json::Kind::boolean: out += value.flag ? "true" : "false"; return;
    case Json::Kind::number: out += value.text; return;
    case Json::Kind::text: out += quoted(value.text); return;
    case Json::Kind::list:
    case Json::Kind::object: break;
    }
    const bool object = value.is(Json::Kind::object);
    out += object ? '{' : '[';
    for (std::size_t i = 0; i < value.items.size(); ++i) {
        if (i > 0) out += ", ";
        if (object) out += quoted(value.keys[i]) + ": ";
        print_flat(value.items[i], out);
    }
    out += object ? '}' : ']';
}

// `used`: characters of this line that stand before the value.
void print_spread(const Json& value, std::size_t indent, std::size_t used, bool spread, std::string& out) {
    const bool object = value.is(Json::Kind::object);
    if (value.items.empty() || (!object && !value.is(Json::Kind::list))) return print_flat(value, out);
    if (!spread) {
        std::string flat;
        print_flat(value, flat);
        if (used + flat.size() < widest_line) {
            out += flat;
            return;
        }
    }
    out += object ? "{\n" : "[\n";
    for (std::size_t i = 0; i < value.items.size(); ++i) {
        std::string head(indent + 2, ' ');
        if (object) head += quoted(value.keys[i]) + ": ";
        out += head;
        print_spread(value.items[i], indent + 2, head.size(), false, out);
        out += i + 1 < value.items.size() ? ",\n" : "\n";
    }
    out += std::string(indent, ' ') + (object ? '}' : ']');
}

} // namespace

Json Json::decimal(std::int64_t count, int decimals) {
    Json value;
    value.kind = Kind::number;
    const bool below = count < 0;
    std::string digits = std::to_string(below ? -count : count);
    const auto places = static_cast<std::size_t>(decimals);
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    std::string fraction = digits.substr(digits.size() - places);
    while (!fraction.empty() && fraction.back() == '0') fraction.pop_back();
    value.text =
        (below ? "-" : "") + digits.substr(0, digits.size() - places) + (fraction.empty() ? "" : "." + fraction);
    return value;
}

Json Json::number(double number, int decimals) {
    if (!std::isfinite(number) || std::fabs(number) > 1e15) return {};
    double scaled = number;
    for (int i = 0; i < decimals; ++i) scaled *= 10;
    return decimal(std::llround(scaled), decimals);
}

const Json* Json::find(std::string_view key) const {
    for (std::size_t i = 0; i < keys.size(); ++i)
        if (keys[i] == key) return &items[i];
    return nullptr;
}

Json& Json::set(std::string_view key, Json value) {
    kind = Kind::object;
    keys.emplace_back(key);
    items.push_back(std::move(value));
    return items.back();
}

Json& Json::push(Json value) {
    kind = Kind::list;
    items.push_back(std::move(value));
    return items.back();
}

Result<Json> read_json(std::string_view text, const std::string& source) {
    if (text.size() > largest_json)
        return failure(refusal("error.json.too-large", {{"most", Count{largest_json / 1024 / 1024}}}, source, 0, 0));
    Builder builder(text, source);
    const Counting first{text.data(), &builder.seen}, last{text.data() + text.size(), nullptr};
    const bool whole_file = nlohmann::json::sax_parse(first, last, &builder);
    if (builder.refused) return failure(*std::move(builder.refused));
    if (!whole_file) return failure(refusal("error.json.not-json", {}, source, 0, 0));
    return std::move(builder.root);
}

std::string print_json(const Json& value) {
    std::string out;
    print_spread(value, 0, 0, true, out);
    out += '\n';
    return out;
}

std::string print_json_line(const Json& value) {
    std::string out;
    print_flat(value, out);
    return out;
}

Decimal read_decimal(std::string_view text, int decimals, std::int64_t& count) {
    double value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault == std::errc::result_out_of_range) return Decimal::too_large;
    if (fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return Decimal::not_a_number;
    if (std::fabs(value) > 1e9) return Decimal::too_large;
    for (int i = 0; i < decimals; ++i) value *= 10;
    const double nearest = std::round(value);
    if (std::fabs(value - nearest) > 1e-6) return Decimal::too_fine;
    count = static_cast<std::int64_t>(nearest);
    return Decimal::fine;
}

} // namespace spurwright::io
