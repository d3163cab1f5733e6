// Reading one JSON object key by key. The first refusal stays and names line, column and key; later reads then give
// harmless values, so that a reader is a plain list of fields. Keys nobody asked for are refused by name at the end.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scenarios/io/json.h"
#include "sim/core/ids.h"
#include "sim/vine/words_of.h"

namespace spurwright::io {

// The refusal of one file, if any.
class Refusal {
public:
    explicit Refusal(std::string source) : source_(std::move(source)) {}
    bool any() const { return error_.has_value(); }
    Error take() { return *std::move(error_); }
    const std::string& source() const { return source_; }
    void add(std::string_view key, Arguments arguments, const Json& at, Fault fault = Fault::bad_file) {
        add({fault, TextKey{key}, std::move(arguments), {source_, at.line, at.column, 0}});
    }
    void add(Error error) {
        if (!error_) error_ = std::move(error);
    }

private:
    std::string source_;
    std::optional<Error> error_;
};

class Fields {
public:
    static constexpr std::int32_t largest_count = 1'000'000'000; // in table units; sums of two still fit
    static constexpr Length longest_length{100'000'000};         // 100 m: nothing in a row is longer (our choice)

    // Refuses what is no object. `refusal` and `object` must outlive this.
    Fields(Refusal& refusal, const Json& object);

    const Json* optional(std::string_view key); // null where left out
    const Json& required(std::string_view key); // a null value where missing, and refused
    bool left_out(std::string_view key) const { return object_->find(key) == nullptr; }

    // Each takes the value to use where the key is left out; without one the key is required.
    Length length(std::string_view key, std::optional<Length> other = {});
    std::optional<Length> length_or_null(std::string_view key); // left out: none
    Mass mass(std::string_view key, std::optional<Mass> other = {});
    std::int64_t whole(std::string_view key, std::int64_t low, std::int64_t high,
                       std::optional<std::int64_t> other = {});
    bool yes(std::string_view key, std::optional<bool> other = {});
    std::string text(std::string_view key, std::size_t longest, std::optional<std::string> other = {});
    // A decimal in units of 1 / 10^decimals.
    std::int32_t decimal(std::string_view key, int decimals, std::optional<std::int32_t> other = {});
    const std::vector<Json>& list(std::string_view key, bool needed);

    template <class E>
    E word(std::string_view key, std::optional<E> other = {}) {
        const Json* value = other ? optional(key) : &required(key);
        if (!value) return *other;
        const std::string found = text_of(*value, key, 200);
        if (const auto read = read_word<E>(found)) return *read;
        refuse_word(*value, key, found, words_text(words_of(E{})));
        return other.value_or(E{});
    }
    // Required: one of the words that there are.
    std::string known_word(std::string_view key, const std::vector<std::string_view>& words) {
        const Json& value = required(key);
        std::string found = text_of(value, key, 200);
        for (const std::string_view word : words)
            if (word == found) return found;
        refuse_word(value, key, found, words_text(words));
        return found;
    }
    NodeId node(std::string_view key);                        // required
    std::optional<NodeId> node_or_null(std::string_view key); // left out or null: none
    AxisId axis(std::string_view key);
    template <class Tag>
    Id<Tag> row(char letter, std::string_view key) {
        const Json& value = required(key);
        return {row_number(letter, value, key)};
    }

    // Refuses the first key nobody asked for. To be called last.
    void end();

    std::string text_of(const Json& value, std::string_view key, std::size_t longest);
    std::int32_t decimal_of(const Json& value, std::string_view key, int decimals,
                            std::int32_t largest = largest_count);
    Length length_of(const Json& value, std::string_view key) {
        return {decimal_of(value, key, 3, longest_length.count)};
    }
    NodeId node_of(const Json& value, std::string_view key);

    Refusal& refusal() { return refusal_; }
    const Json& object() const { return *object_; }

private:
    Refusal& refusal_;
    const Json* object_;
    std::vector<std::string_view> asked_;

    template <class Words>
    static std::string words_text(const Words& words) {
        std::string all;
        for (const auto word : words) all += (all.empty() ? "" : ", ") + std::string(word);
        return all;
    }
    void refuse_word(const Json& value, std::string_view key, const std::string& found, std::string words);
    std::uint32_t row_number(char letter, const Json& value, std::string_view key);
    bool wrong_kind(const Json& value, std::string_view key, Json::Kind wanted);
};

} // namespace spurwright::io
