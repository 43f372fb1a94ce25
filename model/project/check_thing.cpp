#include "model/project/check_thing.h"

#include "engine/files/json_text.h"
#include "model/project/project_fields.h"
#include "model/project/type_traits.h"
#include "model/project/walk_texts.h"

#include <cmath>
#include <optional>
#include <set>
#include <type_traits>

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;
using engine::QuantityKind;
using engine::Result;

// Stand-ins for every name. A formula is read from left to right and fails at its first fault, so
// names of one kind could hide what is unreadable behind "a + 3".
constexpr std::array stand_ins{
    engine::Quantity{.kind = QuantityKind::length, .length = engine::Length::from_nm(1)},
    engine::Quantity{.kind = QuantityKind::number, .value = 1.0},
};

std::string joined(const std::string& where, const std::string& inner) {
    return where.empty() ? inner : where + ", " + inner;
}

std::string key_in_words(std::string_view key) {
    std::string words{key};
    for (char& c : words) {
        if (c == '_') c = ' ';
    }
    return words;
}

bool is_power_of_two(int n) { return n > 0 && (n & (n - 1)) == 0; }

// Looks at every field of one thing; keeps the first fault.
template <Thing T>
class FieldCheck {
public:
    FieldCheck(const T& thing, std::string where) : thing_{thing}, where_{std::move(where)} {}

    template <class M>
    void operator()(const Field& field, M T::*member) {
        check(field, meaning_of(field), thing_.*member, where_of(field));
    }

    template <class Alternatives, class Variant>
    void one_of(const Alternatives& alternatives, Variant T::*member) {
        const Variant& chosen = thing_.*member;
        const Field& field = alternatives[chosen.index()];
        std::visit([&](const auto& value) { check(field, field.meaning, value, where_of(field)); },
                   chosen);
    }

    Result<Done> result() const {
        if (fault_) return *fault_;
        return Done{};
    }

private:
    // A dimension's own kind says what its formulas must give.
    Meaning meaning_of(const Field& field) const {
        Meaning meaning = field.meaning;
        if constexpr (std::is_same_v<T, Dimension>) meaning.quantity = thing_.kind;
        return meaning;
    }

    std::string where_of(const Field& field) const {
        return joined(where_, key_in_words(field.key));
    }

    void fail(ErrorCode code, std::string where, std::string message) {
        if (!fault_) fault_ = Error{code, std::move(where), std::move(message)};
    }

    void take(Result<Done> outcome) {
        if (!outcome && !fault_) fault_ = outcome.error();
    }

    template <class V>
    void check(const Field& field, const Meaning& meaning, const V& value, const std::string& at) {
        if (fault_) return;
        if constexpr (std::is_same_v<V, std::string>) {
            text(meaning, value, at);
        } else if constexpr (std::is_same_v<V, double> || std::is_same_v<V, int>) {
            number(meaning, value, at);
        } else if constexpr (is_optional<V>) {
            if (value) check(field, meaning, *value, at);
        } else if constexpr (is_row<V>) {
            for (const auto& item : value) check(field, meaning, item, at);
        } else if constexpr (is_list<V>) {
            list(field, meaning, value, at);
        } else if constexpr (Thing<V>) {
            take(check_thing(value, where_));
        }
    }

    void text(const Meaning& meaning, const std::string& value, const std::string& at) {
        if (!engine::is_utf8(value)) {
            fail(ErrorCode::invalid_text, at, "not readable as UTF-8 text");
        } else if (meaning.role == Role::formula) {
            if (meaning.may_be_empty && value.empty()) return;
            take(check_formula(value, meaning.quantity.value_or(QuantityKind::length), at));
        } else if (meaning.role == Role::name) {
            if (auto fault = fault_of_name(value); !fault.empty()) {
                fail(ErrorCode::invalid_value, where_,
                     "the name of a " + std::string(thing_name<T>) + " " + fault);
            }
        }
    }

    void number(const Meaning& meaning, double value, const std::string& at) {
        const bool fits = std::isfinite(value) && value >= meaning.least && value <= meaning.most;
        if (!fits) {
            fail(ErrorCode::out_of_range, at, "this number is out of range");
        } else if (meaning.is_power_of_two && !is_power_of_two(static_cast<int>(value))) {
            fail(ErrorCode::invalid_value, at, "must be 1, 2, 4 .. 64");
        }
    }

    template <class List>
    void list(const Field& field,
              const Meaning& meaning,
              const List& items,
              const std::string& at) {
        std::set<std::string_view> names;
        for (const auto& item : items) {
            using Item = std::decay_t<decltype(item)>;
            if constexpr (Thing<Item>) {
                const std::string inside = joined(where_, described(item));
                take(check_thing(item, inside));
                if constexpr (requires { item.name; }) {
                    if (!names.insert(item.name).second) {
                        fail(ErrorCode::duplicate_name, inside,
                             "there are two of this name; give one of them another");
                    }
                }
            } else {
                check(field, meaning, item, at);
            }
        }
    }

    const T& thing_;
    std::string where_;
    std::optional<Error> fault_;
};

}  // namespace

std::string fault_of_name(std::string_view name) {
    if (name.empty()) return "must not be empty";
    const auto is_blank = [](char c) { return static_cast<unsigned char>(c) <= 0x20U; };
    if (is_blank(name.front()) || is_blank(name.back()))
        return "must not begin or end with a space";
    for (const char c : name) {
        if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F) return "must stand on one line";
    }
    return {};
}

Result<Done> check_formula(const Formula& formula, QuantityKind wanted, const std::string& where) {
    for (const engine::Quantity& stand_in : stand_ins) {
        const auto any_name = [&](std::string_view) { return std::optional{stand_in}; };
        const auto value = engine::evaluate(formula, wanted, engine::LengthUnit::inch, any_name);
        if (value || value.error().code != ErrorCode::invalid_text) continue;
        return Error{ErrorCode::invalid_text, joined(where, value.error().where),
                     value.error().message};
    }
    return Done{};
}

template <class T>
Result<Done> check_thing(const T& thing, const std::string& where) {
    FieldCheck<T> check{thing, where};
    visit_fields(check, Of<T>{});
    return check.result();
}

template Result<Done> check_thing(const engine::TapeStyle&, const std::string&);
template Result<Done> check_thing(const Shop&, const std::string&);
template Result<Done> check_thing(const Dimension&, const std::string&);
template Result<Done> check_thing(const Stock&, const std::string&);
template Result<Done> check_thing(const Obstacle&, const std::string&);
template Result<Done> check_thing(const Frame&, const std::string&);
template Result<Done> check_thing(const Plane&, const std::string&);
template Result<Done> check_thing(const Bay&, const std::string&);
template Result<Done> check_thing(const Member&, const std::string&);
template Result<Done> check_thing(const Diagonal&, const std::string&);
template Result<Done> check_thing(const Leaning&, const std::string&);
template Result<Done> check_thing(const JointOverride&, const std::string&);
template Result<Done> check_thing(const Panel&, const std::string&);
template Result<Done> check_thing(const Load&, const std::string&);
template Result<Done> check_thing(const MeasuredOpening&, const std::string&);
template Result<Done> check_thing(const Supplier&, const std::string&);

}  // namespace model
