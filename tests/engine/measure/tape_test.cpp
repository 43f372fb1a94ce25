#include "engine/measure/tape.h"

#include <catch2/catch.hpp>

#include <limits>
#include <random>

using namespace engine;
using namespace engine::literals;

namespace {

Length read(std::string_view text, LengthUnit bare = LengthUnit::inch) {
    const auto length = read_length(text, bare);
    INFO(text);
    if (!length) FAIL(to_text(length.error()));
    return *length;
}

Error refusal(std::string_view text, LengthUnit bare = LengthUnit::inch) {
    const auto length = read_length(text, bare);
    INFO(text);
    if (length) FAIL("was read as " << length->nm() << " nm");
    return length.error();
}

std::string refused_at(std::string_view text) { return refusal(text).where; }

constexpr Length nm(std::int64_t count) { return Length::from_nm(count); }
constexpr Length sixty_fourths(std::int64_t count) { return 1_in_64 * count; }

const TapeStyle fractions{};
const TapeStyle feet{.form = TapeForm::feet_inches};
const TapeStyle decimal_inches{.form = TapeForm::inch_decimal};
const TapeStyle tenths_of_mm{.form = TapeForm::millimetre, .decimals = 1};

}  // namespace

// ---- reading ------------------------------------------------------------------------------------

TEST_CASE("a mixed number has a space or a dash", "[engine][tape]") {
    CHECK(read("18 3/8") == sixty_fourths(18 * 64 + 24));
    CHECK(read("18-3/8") == read("18 3/8"));
    CHECK(read("18-3/8\"") == read("18 3/8"));
    CHECK(read("18   3/8 in") == read("18 3/8"));
    CHECK(read("18\u20133/8") == read("18 3/8"));  // en dash
}

TEST_CASE("a fraction or a whole number may stand alone", "[engine][tape]") {
    CHECK(read("3/8") == 24_in_64);
    CHECK(read("18") == 18_in);
    CHECK(read("9/8") == 72_in_64);
    CHECK(read("0") == Length{});
}

TEST_CASE("fractions of one character are read", "[engine][tape]") {
    CHECK(read("18\u215C") == read("18 3/8"));
    CHECK(read("18 \u215C\"") == read("18 3/8"));
    CHECK(read("18-\u215C") == read("18 3/8"));
    CHECK(read("\u00BD in") == 32_in_64);
    CHECK(read("18 3\u20448") == read("18 3/8"));  // fraction slash
}

TEST_CASE("a bare number is in the unit asked for", "[engine][tape]") {
    CHECK(read("18", LengthUnit::millimetre) == 18_mm);
    CHECK(read("18", LengthUnit::centimetre) == 180_mm);
    CHECK(read("18", LengthUnit::metre) == 18'000_mm);
    CHECK(read("18", LengthUnit::foot) == 216_in);
    CHECK(read("18 in", LengthUnit::millimetre) == 18_in);
}

TEST_CASE("every unit is read with and without a space", "[engine][tape]") {
    CHECK(read("466.7 mm") == nm(466'700'000));
    CHECK(read("466.7mm") == nm(466'700'000));
    CHECK(read("46.67 cm") == nm(466'700'000));
    CHECK(read(".4667 m") == nm(466'700'000));
    CHECK(read("18 inches") == 18_in);
    CHECK(read("1 inch") == 1_in);
    CHECK(read("1 foot") == 12_in);
    CHECK(read("2 feet") == 24_in);
    CHECK(read("18.375in") == read("18 3/8"));
}

TEST_CASE("feet and inches are read with marks or words", "[engine][tape]") {
    const auto expected = read("18 3/8");
    CHECK(read("1' 6 3/8\"") == expected);
    CHECK(read("1'6 3/8\"") == expected);
    CHECK(read("1'-6 3/8\"") == expected);
    CHECK(read("1'-6-3/8\"") == expected);
    CHECK(read("1' 6 3/8") == expected);
    CHECK(read("1 ft 6 3/8 in") == expected);
    CHECK(read("1ft6.375in") == expected);
    CHECK(read("1\u2032 6\u215C\u2033") == expected);  // prime and double prime
    CHECK(read("1\u2019 6 3/8\u201D") == expected);    // as word processors quote
    CHECK(read("1' 6 3/8''") == expected);
    CHECK(read("1 1/2'") == 18_in);
    CHECK(read("2'") == 24_in);
}

TEST_CASE("a sign is for the whole length", "[engine][tape]") {
    CHECK(read("-18 3/8") == -read("18 3/8"));
    CHECK(read("- 1' 6 3/8\"") == -read("18 3/8"));
    CHECK(read("\u221218-3/8") == -read("18 3/8"));  // minus sign
    CHECK(read("+3/8") == 24_in_64);
}

TEST_CASE("what is less than a nanometre is rounded, halves away from zero", "[engine][tape]") {
    CHECK(read("1/128 in") == nm(198'438));  // 198 437.5
    CHECK(read("-1/128 in") == nm(-198'438));
    CHECK(read("0.0000004 mm") == nm(0));
    CHECK(read("0.0000005 mm") == nm(1));
    CHECK(read("0.00000049999999999999999999999999999999 mm") == nm(0));
    CHECK(read("0.00000050000000000000000000000000000001 mm") == nm(1));
    CHECK(read("1/3 mm") == nm(333'333));
}

TEST_CASE("spaces around a length do not matter", "[engine][tape]") {
    CHECK(read("  18 3/8 in \t") == read("18 3/8"));
    CHECK(read("18\u00A03/8\u202Fin") == read("18 3/8"));  // no-break spaces
}

// ---- errors -------------------------------------------------------------------------------------

TEST_CASE("reading tells the column at which it failed", "[engine][tape]") {
    CHECK(refused_at("") == "column 1");
    CHECK(refused_at("   ") == "column 4");
    CHECK(refused_at("wide") == "column 1");
    CHECK(refused_at("18 yards") == "column 4");
    CHECK(refused_at("18 3/8 in x") == "column 11");
    CHECK(refused_at("18 3") == "column 4");
    CHECK(refused_at("18 - 3/8") == "column 4");
    CHECK(refused_at("18 3/0") == "column 6");
    CHECK(refused_at("1.2.3") == "column 4");
    CHECK(refused_at("466,7") == "column 4");
    CHECK(refused_at(".") == "column 1");
    CHECK(refused_at("1 ft 6 mm") == "column 8");
    CHECK(refused_at("--5") == "column 2");
    CHECK(refused_at("45 deg") == "column 1");
}

TEST_CASE("a column counts characters and not bytes", "[engine][tape]") {
    CHECK(refused_at("18\u215C\u2033 x") == "column 6");
}

TEST_CASE("a mixed number whose fraction is not less than one is refused", "[engine][tape]") {
    CHECK(refusal("18 9/8").code == ErrorCode::invalid_text);
    CHECK(refusal("18-8/8").code == ErrorCode::invalid_text);
}

TEST_CASE("every error of reading is of the text or of the range", "[engine][tape]") {
    CHECK(refusal("1/0").code == ErrorCode::invalid_text);
    CHECK(refusal("1e5").code == ErrorCode::invalid_text);
    CHECK(refusal("nan").code == ErrorCode::invalid_text);
    CHECK(refusal("9223372036854.775808 mm").code == ErrorCode::out_of_range);
    CHECK(refusal(std::string(5000, '9')).code == ErrorCode::out_of_range);
    CHECK(refusal(std::string(5000, '9') + "/8").code == ErrorCode::out_of_range);
    CHECK(refusal("1/" + std::string(5000, '9')).code == ErrorCode::out_of_range);
    CHECK(refusal("99999999999999999999' 5\"").code == ErrorCode::out_of_range);
}

TEST_CASE("the whole range of lengths can be read", "[engine][tape]") {
    CHECK(read("9223372036854.775807 mm") == nm(std::numeric_limits<std::int64_t>::max()));
    CHECK(read("-9223372036854.775808 mm") == nm(std::numeric_limits<std::int64_t>::min()));
    CHECK(read("000000000000000000000000000018") == 18_in);
    CHECK(read("1.50000000000000000000000000000000000000000000") == 96_in_64);
}

TEST_CASE("bytes that are no text are refused", "[engine][tape]") {
    CHECK(refused_at("18 \xC3") == "column 4");
    CHECK(refused_at("\xFF\xFE") == "column 1");
    CHECK(refused_at(std::string_view{"18\0", 3}) == "column 3");
}

// ---- printing -----------------------------------------------------------------------------------

TEST_CASE("inch fractions are printed in lowest terms", "[engine][tape]") {
    CHECK(tape_text(read("18 24/64"), fractions) == "18 3/8");
    CHECK(tape_text(18_in, fractions) == "18");
    CHECK(tape_text(24_in_64, fractions) == "3/8");
    CHECK(tape_text(Length{}, fractions) == "0");
    CHECK(tape_text(-24_in_64, fractions) == "-3/8");
    CHECK(tape_text(-read("18 3/8"), fractions) == "-18 3/8");
}

TEST_CASE("printing rounds to the nearest mark, halves away from zero", "[engine][tape]") {
    const TapeStyle eighths{.denominator = 8};
    CHECK(tape_text(sixty_fourths(3), eighths) == "0");
    CHECK(tape_text(sixty_fourths(4), eighths) == "1/8");
    CHECK(tape_text(-sixty_fourths(4), eighths) == "-1/8");
    CHECK(tape_text(-sixty_fourths(3), eighths) == "0");
    CHECK(tape_text(sixty_fourths(63), eighths) == "1");
    CHECK(tape_text(sixty_fourths(63), {.denominator = 1}) == "1");
    CHECK(tape_text(nm(466'650'000), tenths_of_mm) == "466.7");
    CHECK(tape_text(nm(466'649'999), tenths_of_mm) == "466.6");
}

TEST_CASE("feet and inches are printed with their marks", "[engine][tape]") {
    CHECK(tape_text(read("18 3/8"), feet) == "1' 6 3/8\"");
    CHECK(tape_text(6_in, feet) == "6\"");
    CHECK(tape_text(12_in, feet) == "1' 0\"");
    CHECK(tape_text(read("12 3/8"), feet) == "1' 3/8\"");
    CHECK(tape_text(-read("18 3/8"), feet) == "-1' 6 3/8\"");
    CHECK(tape_text(read("11 255/256"), feet) == "1' 0\"");
}

TEST_CASE("decimals end where the rest is zero", "[engine][tape]") {
    CHECK(tape_text(read("18 3/8"), decimal_inches) == "18.375");
    CHECK(tape_text(read("18 1/2"), decimal_inches) == "18.5");
    CHECK(tape_text(18_in, decimal_inches) == "18");
    CHECK(tape_text(nm(466'700'000), tenths_of_mm) == "466.7");
    CHECK(tape_text(nm(466'040'000), {.form = TapeForm::millimetre, .decimals = 2}) == "466.04");
    CHECK(tape_text(nm(466'700'000), {.form = TapeForm::centimetre, .decimals = 2}) == "46.67");
    CHECK(tape_text(nm(466'700'000), {.form = TapeForm::metre, .decimals = 3}) == "0.467");
    CHECK(tape_text(nm(-50'000'000), {.form = TapeForm::metre, .decimals = 1}) == "-0.1");
}

TEST_CASE("the unit is printed where the style asks for it", "[engine][tape]") {
    CHECK(tape_text(read("18 3/8"), {.with_unit = true}) == "18 3/8 in");
    CHECK(tape_text(25_mm, {.form = TapeForm::millimetre, .with_unit = true}) == "25 mm");
    CHECK(tape_text(25_mm, {.form = TapeForm::centimetre, .with_unit = true}) == "2.5 cm");
    CHECK(tape_text(25_mm, {.form = TapeForm::metre, .with_unit = true}) == "0.025 m");
    CHECK(tape_text(1_in, {.form = TapeForm::inch_decimal, .with_unit = true}) == "1 in");
    CHECK(tape_text(1_in, {.form = TapeForm::feet_inches, .with_unit = true}) == "1\"");
}

TEST_CASE("one mark of the tape follows the style", "[engine][tape]") {
    CHECK(tape_step(fractions) == 2_in_64);
    CHECK(tape_step({.denominator = 64}) == 1_in_64);
    CHECK(tape_step({.form = TapeForm::feet_inches, .denominator = 1}) == 1_in);
    CHECK(tape_step({.form = TapeForm::millimetre, .decimals = 0}) == 1_mm);
    CHECK(tape_step({.form = TapeForm::inch_decimal, .decimals = 3}) == nm(25'400));
    CHECK(tape_step({.form = TapeForm::millimetre, .decimals = 7}) == nm(1));
}

TEST_CASE("a style that no tape has is printed with the next coarser marks", "[engine][tape]") {
    CHECK(tape_text(24_in_64, {.denominator = 12}) == "3/8");
    CHECK(tape_text(24_in_64, {.denominator = 0}) == "0");
    CHECK(tape_text(1_in_64, {.denominator = 1000}) == "1/64");
    CHECK(tape_text(1_in, {.form = TapeForm::inch_decimal, .decimals = -1}) == "1");
    CHECK(tape_text(1_in, {.form = TapeForm::inch_decimal, .decimals = 100}) == "1");
}

TEST_CASE("near the ends of the range the last mark that can be read is printed",
          "[engine][tape]") {
    const auto most = nm(std::numeric_limits<std::int64_t>::max());
    const auto least = nm(std::numeric_limits<std::int64_t>::min());
    CHECK(tape_text(most, {.form = TapeForm::millimetre, .decimals = 0}) == "9223372036854");
    CHECK(tape_text(least, {.form = TapeForm::millimetre, .decimals = 0}) == "-9223372036854");
    CHECK(tape_text(most, {.form = TapeForm::millimetre, .decimals = 6}) == "9223372036854.775807");
    CHECK(tape_text(least, {.form = TapeForm::millimetre, .decimals = 6}) ==
          "-9223372036854.775808");
    CHECK(tape_text(most, {.denominator = 1}) == "363124883340");
}

TEST_CASE("an exact text stays in the style where it can", "[engine][tape]") {
    CHECK(exact_text(sixty_fourths(1), fractions) == "1/64");
    CHECK(exact_text(read("18 3/8"), fractions) == "18 3/8");
    CHECK(exact_text(read("18 1/64"), feet) == "1' 6 1/64\"");
    CHECK(exact_text(read("18 1/64"), decimal_inches) == "18.015625");
    CHECK(exact_text(nm(25'400), decimal_inches) == "0.001");
    CHECK(exact_text(nm(466'700'000), tenths_of_mm) == "466.7");
}

TEST_CASE("an exact text falls back to millimetres with their unit", "[engine][tape]") {
    CHECK(exact_text(nm(466'700'000), fractions) == "466.7 mm");
    CHECK(exact_text(nm(1), feet) == "0.000001 mm");
    CHECK(exact_text(nm(466'710'000), tenths_of_mm) == "466.71 mm");
    CHECK(exact_text(nm(std::numeric_limits<std::int64_t>::min()), fractions) ==
          "-9223372036854.775808 mm");
}
