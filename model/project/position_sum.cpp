#include "model/project/position_sum.h"

#include "engine/measure/formula.h"
#include "model/project/follow_room.h"

#include <algorithm>
#include <cstdlib>

namespace model {

namespace {

using engine::Length;

// None where it stands on dimensions.
std::optional<Length> plain_value(const Formula& formula, engine::LengthUnit bare) {
    const auto no_names = [](std::string_view) { return std::nullopt; };
    const auto value = engine::evaluate(formula, engine::QuantityKind::length, bare, no_names);
    return value ? std::optional(value->length) : std::nullopt;
}

}  // namespace

PositionSum& PositionSum::add(const Formula& length, int times) {
    if (const auto plain = plain_value(length, engine::bare_unit(shown_))) {
        plain_ = Length::from_nm(plain_.nm() + times * plain->nm());
        return *this;
    }
    const Formula term = as_term(length);
    const auto known = std::ranges::find(terms_, term, &Term::term);
    if (known != terms_.end()) {
        known->times += times;
    } else {
        terms_.push_back({term, times});
    }
    return *this;
}

PositionSum& PositionSum::add_terms_of(const Formula& sum, int times) {
    for (const auto& [from, to] : terms_of(sum)) {
        const bool is_taken_away = from >= 2 && sum[from - 2] == '-';
        add(sum.substr(from, to - from), is_taken_away ? -times : times);
    }
    return *this;
}

Formula PositionSum::formula() const {
    Formula sum;
    const auto append = [&](bool is_more, const Formula& text) {
        if (!sum.empty()) {
            sum += is_more ? " + " : " - ";
        } else if (!is_more) {
            sum = "0 in - ";
        }
        sum += text;
    };
    const auto append_terms = [&](bool is_more) {
        for (const auto& [term, times] : terms_) {
            if (times == 0 || (times > 0) != is_more) continue;
            const int count = std::abs(times);
            append(is_more, count == 1 ? term : std::to_string(count) + " * " + term);
        }
    };
    engine::TapeStyle with_unit = shown_;
    with_unit.with_unit = true;
    const Formula plain = engine::exact_text(Length::from_nm(std::abs(plain_.nm())), with_unit);
    append_terms(true);
    if (plain_.nm() > 0) append(true, plain);
    append_terms(false);
    if (plain_.nm() < 0) append(false, plain);
    return sum.empty() ? "0" : sum;
}

}  // namespace model
