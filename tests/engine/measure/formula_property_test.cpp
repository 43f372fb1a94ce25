#include "engine/measure/formula.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

using namespace engine;

namespace {

// A formula with the value that it must give, reckoned on its own way in long doubles.
struct Sample {
    std::string text;
    long double value = 0.0L;  // nanometres where it is a length
};

constexpr long double nm_per_inch = 25.4e6L;

std::optional<Quantity> look_up(std::string_view name) {
    if (name == "width")
        return Quantity{QuantityKind::length, Length::from_nm(36 * Length::nm_per_inch), 0.0};
    if (name == "bays") return Quantity{QuantityKind::number, {}, 3.0};
    return std::nullopt;
}

class Samples {
public:
    explicit Samples(unsigned seed) : random_{seed} {}

    std::size_t pick(std::size_t below) { return random_() % below; }

    Sample number(int depth) {
        if (depth == 0) return plain_number();
        switch (pick(6)) {
            case 0:
                return joined(number(depth - 1), " + ", number(depth - 1));
            case 1:
                return joined(number(depth - 1), " - ", number(depth - 1));
            case 2:
                return joined(number(depth - 1), "*", number(depth - 1));
            case 3:
                return joined(number(depth - 1), " / ", plain_number());
            case 4:
                return joined(length(depth - 1), "/", plain_length());
            default:
                return plain_number();
        }
    }

    Sample length(int depth) {
        if (depth == 0) return plain_length();
        switch (pick(7)) {
            case 0:
                return joined(length(depth - 1), " + ", length(depth - 1));
            case 1:
                return joined(length(depth - 1), " - ", length(depth - 1));
            case 2:
                return joined(number(depth - 1), "*", length(depth - 1));
            case 3:
                return joined(length(depth - 1), "/", plain_number());
            case 4:
                return least(length(depth - 1), length(depth - 1));
            case 5:
                return chosen(number(depth - 1), length(depth - 1), length(depth - 1));
            default:
                return plain_length();
        }
    }

    std::string noise() {
        static const std::array<std::string, 34> parts{
            "1",     "3/8",         "18-3/8",
            "0",     ".",           "width",
            "bays",  "step height", "in",
            "ft",    "mm",          "deg",
            "'",     "\"",          "(",
            ")",     ",",           "+",
            "-",     "*",           "/",
            "<",     "==",          "min(",
            "if(",   "round(",      "abs(",
            " ",     "  ",          "\u215C",
            "\xFF",  "!",           "9999999999999999999999",
            "\u2264"};
        std::string text;
        for (auto left = pick(14); left > 0; --left) text += parts[pick(parts.size())];
        return text;
    }

private:
    Sample plain_number() {
        const auto n = 1 + pick(20);
        const auto value = static_cast<long double>(n);
        switch (pick(5)) {
            case 0:
                return {std::to_string(n) + ".25", value + 0.25L};
            case 1:
                return {std::to_string(n) + " 3/4", value + 0.75L};
            case 2:
                return {"(" + std::to_string(n) + "-5/8)", value + 0.625L};
            case 3:
                return {"bays", 3.0L};
            default:
                return {std::to_string(n), value};
        }
    }

    Sample plain_length() {
        const auto n = 1 + pick(40);
        const auto text = std::to_string(n);
        const auto value = static_cast<long double>(n);
        switch (pick(6)) {
            case 0:
                return {text + " 3/8 in", (value + 0.375L) * nm_per_inch};
            case 1:
                return {text + ".5 mm", (value + 0.5L) * 1e6L};
            case 2:
                return {text + "' 6\"", (value * 12.0L + 6.0L) * nm_per_inch};
            case 3:
                return {"width", 36.0L * nm_per_inch};
            case 4:
                return {text + "/64 in", value / 64.0L * nm_per_inch};
            default:
                return {text + "cm", value * 1e7L};
        }
    }

    static Sample joined(const Sample& a, const std::string& sign, const Sample& b) {
        const auto text = "(" + a.text + ")" + sign + "(" + b.text + ")";
        if (sign == " + ") return {text, a.value + b.value};
        if (sign == " - ") return {text, a.value - b.value};
        if (sign == "*") return {text, a.value * b.value};
        return {text, a.value / b.value};
    }

    static Sample least(const Sample& a, const Sample& b) {
        return {"min(" + a.text + ", " + b.text + ")", std::min(a.value, b.value)};
    }

    static Sample chosen(const Sample& number, const Sample& a, const Sample& b) {
        // Far from equal, so that the long double cannot be on the other side.
        return {"if(" + number.text + " < 3.1415926535, " + a.text + ", " + b.text + ")",
                number.value < 3.1415926535L ? a.value : b.value};
    }

    std::mt19937 random_;
};

bool is_out_of_range(const Result<Quantity>& result) {
    return !result && result.error().code == ErrorCode::out_of_range;
}

}  // namespace

TEST_CASE("any formula of lengths gives what arithmetic gives", "[engine][formula][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    Samples samples{seed};
    int unfit = 0;
    for (int i = 0; i < 500; ++i) {
        const auto sample = samples.length(static_cast<int>(samples.pick(4)));
        CAPTURE(sample.text);
        const auto result = evaluate(sample.text, QuantityKind::length, LengthUnit::inch, look_up);
        if (is_out_of_range(result)) {
            ++unfit;
            continue;
        }
        if (!result) FAIL(to_text(result.error()));
        const auto off = std::abs(static_cast<long double>(result->length.nm()) - sample.value);
        REQUIRE(off <= 0.51L + std::abs(sample.value) * 1e-15L);
    }
    CHECK(unfit < 25);
}

TEST_CASE("any formula of numbers gives what arithmetic gives", "[engine][formula][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    Samples samples{seed};
    for (int i = 0; i < 500; ++i) {
        const auto sample = samples.number(static_cast<int>(samples.pick(4)));
        CAPTURE(sample.text);
        const auto result = evaluate(sample.text, QuantityKind::number, LengthUnit::inch, look_up);
        if (!result) FAIL(to_text(result.error()));
        const auto off = std::abs(static_cast<long double>(result->value) - sample.value);
        REQUIRE(off <= 1e-9L + std::abs(sample.value) * 1e-15L);
    }
}

TEST_CASE("noise is evaluated or refused at a column within it", "[engine][formula][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    Samples samples{seed};
    for (int i = 0; i < 1000; ++i) {
        const auto text = samples.noise();
        CAPTURE(text);
        const auto result = evaluate(text, QuantityKind::length, LengthUnit::inch, look_up);
        if (result) continue;
        const auto& error = result.error();
        REQUIRE(error.where.substr(0, 7) == "column ");
        const auto column = std::stoul(error.where.substr(7));
        REQUIRE(column >= 1);
        REQUIRE(column <= text.size() + 1);
        REQUIRE_FALSE(error.message.empty());
    }
}

TEST_CASE("replacing a name by itself changes nothing", "[engine][formula][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    Samples samples{seed};
    for (int i = 0; i < 500; ++i) {
        const auto text = samples.noise();
        CAPTURE(text);
        for (const auto& name : names_in(text)) {
            REQUIRE(is_name(name));
            REQUIRE(with_name_replaced(text, name, name) == text);
        }
    }
}

TEST_CASE("a renamed value gives what it gave before", "[engine][formula][property]") {
    const auto seed = GENERATE(range(1U, 21U));
    CAPTURE(seed);
    Samples samples{seed};
    const auto renamed = [](std::string_view name) {
        return look_up(name == "overall width 2" ? "width" : name == "width" ? "" : name);
    };
    for (int i = 0; i < 200; ++i) {
        const auto text = samples.length(3).text;
        const auto after = with_name_replaced(text, "width", "overall width 2");
        CAPTURE(text, after);
        const auto old_value = evaluate(text, QuantityKind::length, LengthUnit::inch, look_up);
        const auto new_value = evaluate(after, QuantityKind::length, LengthUnit::inch, renamed);
        REQUIRE(old_value.has_value() == new_value.has_value());
        if (old_value) REQUIRE(*old_value == *new_value);
    }
}
