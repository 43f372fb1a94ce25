#include "engine/measure/formula.h"

#include <catch2/catch.hpp>

#include <map>

using namespace engine;
using namespace engine::literals;

namespace {

std::optional<Quantity> look_up(std::string_view name) {
    static const std::map<std::string, Quantity, std::less<>> values{
        {"width", {QuantityKind::length, 36_in, 0.0}},
        {"step height", {QuantityKind::length, 10_in, 0.0}},
        {"shelf 2", {QuantityKind::length, 9_in, 0.0}},
        {"lean", {QuantityKind::angle, {}, 12.5}},
        {"bays", {QuantityKind::number, {}, 3.0}},
        {"third", {QuantityKind::number, {}, 1.0 / 3.0}},
    };
    const auto found = values.find(name);
    if (found == values.end()) return std::nullopt;
    return found->second;
}

Result<Quantity> evaluated(std::string_view formula, QuantityKind wanted) {
    return evaluate(formula, wanted, LengthUnit::inch, look_up);
}

Length length_of(std::string_view formula) {
    const auto quantity = evaluated(formula, QuantityKind::length);
    INFO(formula);
    if (!quantity) FAIL(to_text(quantity.error()));
    return quantity->length;
}

double number_of(std::string_view formula) {
    const auto quantity = evaluated(formula, QuantityKind::number);
    INFO(formula);
    if (!quantity) FAIL(to_text(quantity.error()));
    return quantity->value;
}

double angle_of(std::string_view formula) {
    const auto quantity = evaluated(formula, QuantityKind::angle);
    INFO(formula);
    if (!quantity) FAIL(to_text(quantity.error()));
    return quantity->value;
}

Error refusal(std::string_view formula, QuantityKind wanted = QuantityKind::length) {
    const auto quantity = evaluated(formula, wanted);
    INFO(formula);
    if (quantity) FAIL("was read");
    return quantity.error();
}

bool mentions(const Error& error, std::string_view text) {
    INFO(error.message);
    return error.message.find(text) != std::string::npos;
}

}  // namespace

// ---- literals -----------------------------------------------------------------------------------

TEST_CASE("a formula that is only a number is in the bare unit", "[engine][formula]") {
    CHECK(length_of("18 3/8") == 18_in + 24_in_64);
    CHECK(length_of("18-3/8") == 18_in + 24_in_64);
    CHECK(length_of("-3/8") == -24_in_64);
    CHECK(length_of(" 18 ") == 18_in);
    CHECK(evaluate("18", QuantityKind::length, LengthUnit::millimetre, look_up)->length == 18_mm);
    CHECK(angle_of("12.5") == 12.5);
    CHECK(number_of("18-1/2") == 18.5);
}

TEST_CASE("a bare number in a longer formula is a plain number", "[engine][formula]") {
    CHECK(number_of("2 + 3 * 4") == 14.0);
    CHECK(refusal("(18)").code == ErrorCode::invalid_value);
    CHECK(refusal("9 * 2").code == ErrorCode::invalid_value);
    CHECK(refusal("18 - 3/8").code == ErrorCode::invalid_value);
}

TEST_CASE("a dash joins a mixed number only at the start of a term", "[engine][formula]") {
    CHECK(length_of("width - 18-3/8 in") == 17_in + 40_in_64);
    CHECK(length_of("width-18-3/8\"") == 17_in + 40_in_64);
    CHECK(length_of("width/2-1/8 in") == 17_in + 56_in_64);
    CHECK(length_of("width*2-1/8 in") == 71_in + 56_in_64);
    CHECK(number_of("18 - 3/8") == 17.625);
    CHECK(number_of("36-18-3/8") == 17.625);
    CHECK(number_of("18 -3/8") == 17.625);
    CHECK(length_of("width - 1'-6\"") == 18_in);
    CHECK(length_of("3' - 6\"") == 30_in);
}

TEST_CASE("a mixed number with a dash inside a product is refused", "[engine][formula]") {
    CHECK(refusal("5-1/2*2", QuantityKind::number).where == "column 1");
    CHECK(refusal("1 + 5-1/2/2", QuantityKind::number).where == "column 5");
    CHECK(number_of("(5-1/2)*2") == 11.0);
    CHECK(number_of("5 1/2*2") == 11.0);
    CHECK(number_of("5 - 1/2*2") == 4.0);
}

TEST_CASE("a chain of divisions goes from left to right", "[engine][formula]") {
    CHECK(length_of("width/3/4") == 3_in);
    CHECK(number_of("24/3/4") == 2.0);
    CHECK(length_of("width/1 1/2") == 24_in);
    CHECK(number_of("1/2*4") == 2.0);
    CHECK(number_of("12 / 3 * 2") == 8.0);
    CHECK(number_of("3/0.5") == 6.0);
    CHECK(number_of("1 + 3/1.5") == 3.0);
}

// ---- arithmetic with dimensions -----------------------------------------------------------------

TEST_CASE("lengths are added, subtracted, scaled and compared by ratio", "[engine][formula]") {
    CHECK(length_of("width/2 - 1/8 in") == 17_in + 56_in_64);
    CHECK(length_of("width + 25.4 mm") == 37_in);
    CHECK(length_of("3 * step height") == 30_in);
    CHECK(length_of("-width + 40 in") == 4_in);
    CHECK(length_of("- -width") == 36_in);
    CHECK(length_of("width - -1 in") == 37_in);
    CHECK(length_of("(width - 2 * 3/4 in) / bays") == 11_in + 32_in_64);
    CHECK(number_of("width / step height") == 3.6);
    CHECK(angle_of("90 deg - lean") == 77.5);
    CHECK(angle_of("lean * 2") == 25.0);
    CHECK(angle_of("45\u00B0") == 45.0);
    CHECK(number_of("lean / 1 degree") == 12.5);
}

TEST_CASE("names may have inner spaces and digits", "[engine][formula]") {
    CHECK(length_of("width - step height") == 26_in);
    CHECK(length_of("shelf 2") == 9_in);
    CHECK(length_of("shelf 2/3") == 3_in);
    CHECK(length_of("step height*2") == 20_in);
}

TEST_CASE("a length is rounded once, at the end", "[engine][formula]") {
    CHECK(length_of("1 mm / 3 * 3") == 1_mm);
    CHECK(length_of("width * third * 3") == 36_in);
    CHECK(length_of("1 mm / 3") == Length::from_nm(333'333));
    CHECK(number_of("third * 3") == 1.0);
    CHECK(number_of("0.1 + 0.2") == 0.3);
}

TEST_CASE("mixed dimensions are refused and the term is named", "[engine][formula]") {
    const auto error = refusal("width + 1/8");
    CHECK(error.code == ErrorCode::invalid_value);
    CHECK(error.where == "column 9");
    CHECK(mentions(error, "`1/8` is a plain number"));
    CHECK(mentions(error, "give `1/8` a unit"));
    CHECK(refusal("1/8 + width").where == "column 1");
    CHECK(mentions(refusal("width + lean"), "`lean` is an angle"));
    CHECK(refusal("width * width").where == "column 9");
    CHECK(refusal("2 / width").where == "column 5");
    CHECK(mentions(refusal("bays * 2"), "a plain number where a length is needed"));
    CHECK(mentions(refusal("68 1/2 - 22"), "give the numbers that are lengths a unit"));
    CHECK(mentions(refusal("width", QuantityKind::number), "a length where a plain number"));
}

TEST_CASE("dividing by zero is refused at the divisor", "[engine][formula]") {
    CHECK(refusal("width / 0").code == ErrorCode::invalid_value);
    CHECK(refusal("width / 0").where == "column 9");
    CHECK(refusal("width / (bays - 3)").where == "column 9");
    CHECK(refusal("1/0", QuantityKind::number).code == ErrorCode::invalid_value);
}

TEST_CASE("what does not fit is out of range", "[engine][formula]") {
    CHECK(refusal("width * 1000000000000").code == ErrorCode::out_of_range);
    CHECK(refusal("99999999999999999999 in").code == ErrorCode::out_of_range);
    std::string product = "1000000007";
    for (int i = 0; i < 100; ++i) product += " * 1000000007";
    CHECK(refusal(product, QuantityKind::number).code == ErrorCode::out_of_range);
    std::string fine = "0.000000000000000001";
    for (int i = 0; i < 100; ++i) fine += " * 0.000000000000000001";
    CHECK(refusal(fine, QuantityKind::number).code == ErrorCode::out_of_range);
}

// ---- functions ----------------------------------------------------------------------------------

TEST_CASE("least, most and size of values", "[engine][formula]") {
    CHECK(length_of("min(width, step height, 20 in)") == 10_in);
    CHECK(length_of("max(width, step height)") == 36_in);
    CHECK(length_of("abs(step height - width)") == 26_in);
    CHECK(number_of("max(3)") == 3.0);
    CHECK(refusal("max(0, width)").where == "column 5");
}

TEST_CASE("rounding goes to whole steps", "[engine][formula]") {
    CHECK(length_of("round(width/7, 1/8 in)") == 5_in + 8_in_64);  // 5.142...
    CHECK(length_of("floor(width/7, 1/4 in)") == 5_in);
    CHECK(length_of("ceil(width/7, 1/4 in)") == 5_in + 16_in_64);
    CHECK(number_of("round(2.5, 1)") == 3.0);
    CHECK(number_of("round(-2.5, 1)") == -3.0);
    CHECK(number_of("floor(-2.5, 1)") == -3.0);
    CHECK(number_of("ceil(-2.5, 1)") == -2.0);
    CHECK(number_of("floor(3 * third, 1)") == 1.0);
    CHECK(refusal("round(width, 0 in)").code == ErrorCode::invalid_value);
    CHECK(refusal("round(width, 2)").where == "column 14");
    CHECK(refusal("round(width)").code == ErrorCode::invalid_text);
}

TEST_CASE("if chooses by a comparison", "[engine][formula]") {
    CHECK(length_of("if(width > 30 in, 1 in, 2 in)") == 1_in);
    CHECK(length_of("if(width < 30 in, 1 in, 2 in)") == 2_in);
    CHECK(length_of("if(width <= 36 in, 1 in, 2 in)") == 1_in);
    CHECK(length_of("if(width >= 36 in, 1 in, 2 in)") == 1_in);
    CHECK(length_of("if(width == 3 ft, 1 in, 2 in)") == 1_in);
    CHECK(length_of("if(width != 3 ft, 1 in, 2 in)") == 2_in);
    CHECK(length_of("if(bays > 1, if(bays > 2, 3 in, 2 in), 1 in)") == 3_in);
}

TEST_CASE("the branch that is not taken may divide by zero but not mix kinds",
          "[engine][formula]") {
    CHECK(length_of("if(bays > 3, width/(bays - 3), width)") == 36_in);
    CHECK(length_of("if(bays == 3, width, round(width, width - width))") == 36_in);
    CHECK(length_of("if(bays > 3, if(bays <= 3, width/(bays - 3), width), width)") == 36_in);
    CHECK(refusal("if(bays > 3, width + 2, width)").code == ErrorCode::invalid_value);
    CHECK(refusal("if(bays > 3, nothing, width)").code == ErrorCode::unknown_name);
    CHECK(refusal("if(bays > 3, 2, width)").code == ErrorCode::invalid_value);
}

TEST_CASE("a comparison outside of if is refused", "[engine][formula]") {
    CHECK(refusal("width > 3 in").where == "column 7");
    CHECK(refusal("if(1 < 2 < 3, width, width)").where == "column 10");
    CHECK(refusal("if(width, width, width)").where == "column 9");
}

// ---- errors -------------------------------------------------------------------------------------

TEST_CASE("a formula that cannot be read tells the column", "[engine][formula]") {
    const auto at = [](std::string_view formula) {
        const auto error = refusal(formula);
        CHECK(error.code == ErrorCode::invalid_text);
        return error.where;
    };
    CHECK(at("") == "column 1");
    CHECK(at("width +") == "column 8");
    CHECK(at("width + * 2") == "column 9");
    CHECK(at("(width") == "column 1");
    CHECK(at("width)") == "column 6");
    CHECK(at("min(width") == "column 4");
    CHECK(at("abs(width, width)") == "column 10");
    CHECK(at("2 width") == "column 3");
    CHECK(at("in") == "column 1");
    CHECK(at("width, width") == "column 6");
    CHECK(at("width  tall") == "column 8");
    CHECK(at("width # 2") == "column 7");
    CHECK(at("min()") == "column 5");
}

TEST_CASE("an unknown name is named with its column", "[engine][formula]") {
    const auto error = refusal("width + depth of it");
    CHECK(error.code == ErrorCode::unknown_name);
    CHECK(error.where == "column 9");
    CHECK(mentions(error, "`depth of it`"));
    CHECK(refusal("sqrt(width)").code == ErrorCode::unknown_name);
}

TEST_CASE("without a lookup every name is unknown", "[engine][formula]") {
    const auto result = evaluate("width", QuantityKind::length, LengthUnit::inch, {});
    REQUIRE_FALSE(result);
    CHECK(result.error().code == ErrorCode::unknown_name);
}

TEST_CASE("nesting without end is an error", "[engine][formula]") {
    const auto nested = [](std::size_t depth, const std::string& open) {
        std::string text;
        for (std::size_t i = 0; i < depth; ++i) text += open;
        return text + "1 in" + std::string(depth, ')');
    };
    CHECK(length_of(nested(100, "(")) == 1_in);
    CHECK(refusal(nested(10'000, "(")).code == ErrorCode::invalid_text);
    CHECK(refusal(nested(10'000, "(")).where == "column 101");
    CHECK(refusal(nested(10'000, "abs(")).code == ErrorCode::invalid_text);
    CHECK(refusal(nested(10'000, "if(1 > ")).code == ErrorCode::invalid_text);
    CHECK(refusal(std::string(100'000, '(')).code == ErrorCode::invalid_text);
    CHECK(length_of(std::string(100'000, '-') + "1 in") == 1_in);
}

TEST_CASE("a very long formula is read in one go", "[engine][formula]") {
    std::string text = "0 in";
    for (int i = 0; i < 100'000; ++i) text += " + 1/64 in";
    CHECK(length_of(text) == 1_in_64 * 100'000);
    CHECK(refusal(text + " +").where == "column " + std::to_string(text.size() + 3));
}

// ---- many at once -------------------------------------------------------------------------------

TEST_CASE("formulas may refer to one another in any order", "[engine][formula]") {
    const std::vector<NamedFormula> formulas{
        {"inner", "width - 2 * wall", QuantityKind::length},
        {"width", "bays * 12 in", QuantityKind::length},
        {"bays", "3", QuantityKind::number},
        {"wall", "1/8", QuantityKind::length},
    };
    const auto values = evaluate_all(formulas, LengthUnit::inch);
    REQUIRE(values.size() == 4);
    CHECK(values[0]->length == 35_in + 48_in_64);
    CHECK(values[1]->length == 36_in);
    CHECK(values[2]->value == 3.0);
}

TEST_CASE("a cycle names its loop", "[engine][formula]") {
    const std::vector<NamedFormula> formulas{
        {"a", "b + 1 in"}, {"b", "2 * a"}, {"c", "c"}, {"d", "a + 1 in"}, {"e", "3"}};
    const auto values = evaluate_all(formulas, LengthUnit::inch);
    REQUIRE_FALSE(values[0]);
    CHECK(values[0].error() == Error{ErrorCode::cycle, "column 1", "a needs b needs a"});
    CHECK(values[1].error() == Error{ErrorCode::cycle, "column 5", "b needs a needs b"});
    CHECK(values[2].error() == Error{ErrorCode::cycle, "column 1", "c needs c"});
    CHECK(values[3].error().code == ErrorCode::invalid_value);
    CHECK(values[3].error().where == "column 1");
    CHECK(values[4]->length == 3_in);
}

TEST_CASE("each of two loops that share a name is named", "[engine][formula]") {
    const std::vector<NamedFormula> formulas{
        {"hub", "left + right"}, {"left", "hub"}, {"right", "hub"}};
    const auto values = evaluate_all(formulas, LengthUnit::inch);
    CHECK(values[0].error().message == "hub needs right needs hub");
    CHECK(values[1].error().message == "left needs hub needs left");
    CHECK(values[2].error().message == "right needs hub needs right");
}

TEST_CASE("a chain of thirty thousand formulas is evaluated", "[engine][formula]") {
    std::vector<std::string> texts{"1 in"};
    std::vector<std::string> names{"n 0"};
    for (int i = 1; i < 30'000; ++i) {
        texts.push_back("n " + std::to_string(i - 1) + " + 1/64 in");
        names.push_back("n " + std::to_string(i));
    }
    std::vector<NamedFormula> formulas;
    for (std::size_t i = texts.size(); i-- > 0;) formulas.push_back({names[i], texts[i]});
    CHECK(evaluate_all(formulas, LengthUnit::inch)[0]->length == 1_in + 1_in_64 * 29'999);

    texts[0] = names.back();
    formulas.back().formula = texts[0];
    const auto looped = evaluate_all(formulas, LengthUnit::inch);
    CHECK(looped[0].error().code == ErrorCode::cycle);
    CHECK(looped[0].error().message.size() < 300);
}

TEST_CASE("of two formulas with one name the first serves", "[engine][formula]") {
    const std::vector<NamedFormula> formulas{{"a", "1"}, {"a", "2"}, {"b", "a"}};
    const auto values = evaluate_all(formulas, LengthUnit::inch);
    CHECK(values[1]->length == 2_in);
    CHECK(values[2]->length == 1_in);
}

// ---- names --------------------------------------------------------------------------------------

TEST_CASE("the names in a formula come in order of first use", "[engine][formula]") {
    using Names = std::vector<std::string>;
    CHECK(names_in("b + a*2 in - b") == Names{"b", "a"});
    CHECK(names_in("min(step height, 1 ft 6 in)") == Names{"step height"});
    CHECK(names_in("if(a > 2, b, c)") == Names{"a", "b", "c"});
    CHECK(names_in("18 3/8 in").empty());
    CHECK(names_in("2mm+m 2").size() == 1);
    CHECK(names_in("").empty());
    CHECK(names_in("a + ") == Names{"a"});
    CHECK(names_in("))) #").empty());
}

TEST_CASE("replacing a name leaves all else untouched", "[engine][formula]") {
    CHECK(with_name_replaced("width/2 -  1/8 in", "width", "overall width") ==
          "overall width/2 -  1/8 in");
    CHECK(with_name_replaced("step height + step", "step", "rise") == "step height + rise");
    CHECK(with_name_replaced("1 in + inner", "in", "x") == "1 in + inner");
    CHECK(with_name_replaced("a*a", "a", "b") == "b*b");
    CHECK(with_name_replaced("a +* (", "a", "b") == "b +* (");
    CHECK(with_name_replaced("", "a", "b").empty());
}

TEST_CASE("a name starts with a letter and is no unit and no function", "[engine][formula]") {
    CHECK(is_name("width"));
    CHECK(is_name("step height"));
    CHECK(is_name("shelf 2"));
    CHECK(is_name("h\u00F6he"));
    CHECK(is_name("in place"));
    CHECK(is_name("a_1"));
    CHECK_FALSE(is_name(""));
    CHECK_FALSE(is_name("2nd shelf"));
    CHECK_FALSE(is_name("step  height"));
    CHECK_FALSE(is_name(" width"));
    CHECK_FALSE(is_name("width "));
    CHECK_FALSE(is_name("in"));
    CHECK_FALSE(is_name("feet"));
    CHECK_FALSE(is_name("deg"));
    CHECK_FALSE(is_name("min"));
    CHECK_FALSE(is_name("if"));
    CHECK_FALSE(is_name("a-b"));
    CHECK_FALSE(is_name("_a"));
}
