#include "model/buying/money.h"

#include "engine/measure/text_scan.h"
#include "model/buying/list_rows.h"

#include <cmath>
#include <cstdlib>
#include <optional>

namespace model {
namespace {

using engine::Error;
using engine::ErrorCode;

Error not_money(std::string_view text, const std::string& why) {
    return {
        .code = ErrorCode::invalid_text, .where = "", .message = engine::quoted(text) + " " + why};
}

bool is_digit_at(std::string_view text, std::size_t at) {
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// Where the last digit ends, from the first one on.
std::size_t end_of_digits(std::string_view text) { return text.find_last_of("0123456789") + 1; }

// Digits with points, commas, and whatever parts thousands otherwise as apostrophes.
std::string with_plain_marks(std::string_view number) {
    std::string plain;
    for (std::size_t at = 0; at < number.size();) {
        const auto character = engine::decoded_character(number, at);
        const bool is_apostrophe = character.code == U'\'' || character.code == 0x2019;
        if (engine::is_space(character.code) || is_apostrophe) {
            plain += '\'';
        } else {
            plain += number.substr(at, character.bytes);
        }
        at += character.bytes;
    }
    return plain;
}

// Takes thousands marks out of a whole number; none where they do not stand before each three
// digits.
std::optional<std::string> without_thousands(std::string_view whole, char mark) {
    std::string digits;
    std::size_t since_mark = 0;
    bool has_mark = false;
    for (const char c : whole) {
        if (c == mark) {
            const bool is_early = has_mark ? since_mark != 3 : since_mark == 0 || since_mark > 3;
            if (is_early) return std::nullopt;
            has_mark = true;
            since_mark = 0;
        } else if (c >= '0' && c <= '9') {
            digits += c;
            ++since_mark;
        } else {
            return std::nullopt;
        }
    }
    if (digits.empty() || (has_mark && since_mark != 3)) return std::nullopt;
    return digits;
}

struct Decimal {
    std::string whole;
    std::string fraction;
};

enum class ThreeDecimals { in_doubt, meant };

// The mark that parts the fraction: the last one, if it stands there once and any other kind
// before it.
engine::Result<Decimal> split_decimal(std::string_view typed, ThreeDecimals three) {
    const std::string text = with_plain_marks(typed);
    const Error senseless = not_money(typed, "is no number; write it like 1234.50");
    const auto last = text.find_last_of(".,'");
    if (last == std::string::npos) {
        const auto digits = without_thousands(text, '\'');
        return digits ? engine::Result<Decimal>{Decimal{*digits, ""}} : senseless;
    }
    const char mark = text[last];
    const bool stands_once = text.find(mark) == last;
    const auto other = text.find_first_of(".,'");
    const char thousands = text[other] == mark ? '\'' : text[other];
    if (mark == '\'' || !stands_once) {
        const auto digits = without_thousands(text, mark);
        return digits ? engine::Result<Decimal>{Decimal{*digits, ""}} : senseless;
    }
    const auto whole = without_thousands(std::string_view{text}.substr(0, last), thousands);
    const auto fraction = text.substr(last + 1);
    if (!whole || fraction.empty() || fraction.find_first_not_of("0123456789") != std::string::npos)
        return senseless;
    const bool could_be_thousands = other == last && fraction.size() == 3 && *whole != "0";
    if (could_be_thousands && three == ThreeDecimals::in_doubt) {
        return not_money(typed, "can be read in two ways; write " + *whole + fraction + " or " +
                                    *whole + "." + fraction.substr(0, 2));
    }
    return Decimal{*whole, fraction};
}

bool is_sign(std::string_view sign) {
    if (sign.empty()) return true;
    const auto first = engine::decoded_character(sign, 0);
    if (first.bytes == sign.size()) {
        return first.code == U'$' || engine::is_between(first.code, 0xA2, 0xA5) ||
               engine::is_between(first.code, 0x20A0, 0x20CF);
    }
    if (sign == "kr" || sign == "Kr" || sign == "Fr") return true;
    return sign.size() == 3 &&
           sign.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string_view::npos;
}

// "Fr." stands for "Fr".
std::string_view sign_in(std::string_view text) {
    text = trimmed(text);
    if (text.size() > 1 && text.back() == '.') text.remove_suffix(1);
    return text;
}

// All digits as one number; none above the limit.
std::optional<std::int64_t> number_of(const std::string& digits, std::int64_t most) {
    std::int64_t value = 0;
    for (const char c : digits) {
        value = value * 10 + (c - '0');
        if (value > most) return std::nullopt;
    }
    return value;
}

}  // namespace

engine::Result<ReadMoney> read_money(std::string_view text) {
    constexpr std::size_t longest = 60;
    const auto first = text.find_first_of("0123456789");
    if (first == std::string_view::npos || text.size() > longest)
        return not_money(text, "is no price; write it like 33.50, or leave it empty");
    const auto end = end_of_digits(text);
    const auto before = sign_in(text.substr(0, first));
    const auto behind = sign_in(text.substr(end));
    if (before.find_first_of("-+(") != std::string_view::npos)
        return not_money(text, "has a sign in front; a price is written without one");
    if (!is_sign(before) || !is_sign(behind) || (!before.empty() && !behind.empty()))
        return not_money(text, "is no price; write it like 33.50 or 33.50 EUR");
    const auto decimal = split_decimal(text.substr(first, end - first), ThreeDecimals::in_doubt);
    if (!decimal) return decimal.error();
    auto fraction = decimal->fraction;
    while (fraction.size() > 2 && fraction.back() == '0') fraction.pop_back();
    if (fraction.size() > 2)
        return not_money(text, "is finer than a hundredth; give the price of more at once");
    fraction.resize(2, '0');
    const auto cents = number_of(decimal->whole + fraction, most_cents);
    if (!cents) {
        return Error{.code = ErrorCode::out_of_range,
                     .where = "",
                     .message = engine::quoted(text) +
                                " is more than any price; write it in the "
                                "list's currency"};
    }
    const auto sign = before.empty() ? behind : before;
    return ReadMoney{.cents = *cents, .sign = std::string(sign)};
}

engine::Result<double> read_percent(std::string_view text) {
    auto number = trimmed(text);
    if (!number.empty() && number.back() == '%')
        number = trimmed(number.substr(0, number.size() - 1));
    const auto wrong = not_money(text, "is no percentage; write it like 8.25");
    if (!is_digit_at(number, 0) || number.size() > 20) return wrong;
    const auto decimal = split_decimal(number, ThreeDecimals::meant);
    if (!decimal || decimal->fraction.size() > 4) return wrong;
    auto fraction = decimal->fraction;
    fraction.resize(4, '0');
    constexpr std::int64_t most = 9'999'999;  // 999.9999
    const auto parts = number_of(decimal->whole + fraction, most);
    if (!parts) return wrong;
    return static_cast<double>(*parts) / 10'000.0;
}

std::string money_text(Cents cents) {
    const auto size = std::llabs(cents);
    const auto rest = std::to_string(size % 100);
    return (cents < 0 ? "-" : "") + std::to_string(size / 100) + "." +
           (rest.size() < 2 ? "0" : "") + rest;
}

Cents share_of(Cents sum, double percent) {
    __extension__ typedef __int128 Wide;
    constexpr Wide whole = 1'000'000;
    const Wide parts = std::llround(percent * 10'000.0);
    const Wide product = Wide{sum} * parts;
    const Wide half = product < 0 ? -whole / 2 : whole / 2;
    return static_cast<Cents>((product + half) / whole);
}

}  // namespace model
