#include "editor/dialogs/vent_form.h"
#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "editor/panel_facts.h"

#include <cmath>
#include <utility>

namespace editor {
namespace {

using engine::Length;
using engine::QuantityKind;

// Reads field after field; keeps what is wrong with the first.
class Reading {
public:
    explicit Reading(const Derived& derived) : derived_{derived} {}

    Length length(const std::string& text, const std::string& what) {
        if (text.empty()) fail(what + ": give a length");
        if (!trouble_.empty()) return {};
        const auto value = tried_length(derived_, text);
        if (!value) fail(what + ": " + error_words(value.error(), text));
        return value ? value->length : Length{};
    }

    std::optional<Length> length_if_any(const std::string& text, const std::string& what) {
        if (text.empty()) return std::nullopt;
        return length(text, what);
    }

    double number(const std::string& text, const std::string& what) {
        if (text.empty()) fail(what + ": give a number");
        if (!trouble_.empty()) return 0.0;
        const auto value = tried_limit(*derived_.project, QuantityKind::number, text);
        if (!value) fail(what + ": " + error_words(value.error(), text));
        return value ? value->value : 0.0;
    }

    int whole_number(const std::string& text, const std::string& what) {
        const double value = number(text, what);
        if (trouble_.empty() && (value != std::floor(value) || std::abs(value) > 1000)) {
            fail(what + ": give a whole number");
        }
        return trouble_.empty() ? static_cast<int>(value) : 0;
    }

    double free_area(const model::Catalogue& catalogue, const std::string& cover) {
        const auto* row = model::find_vent_cover(catalogue, cover);
        if (row == nullptr) fail("choose what covers the openings");
        return row == nullptr ? 0.0 : row->free_area;
    }

    const std::string& trouble() const { return trouble_; }

private:
    void fail(std::string why) {
        if (trouble_.empty()) trouble_ = std::move(why);
    }

    const Derived& derived_;
    std::string trouble_;
};

model::VentDemand demand_of(const VentForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue,
                            Reading& read) {
    const auto& source = form.source;
    model::VentDemand demand;
    if (source.is_round) {
        demand.exhaust = model::RoundVent{read.length(source.diameter, "diameter")};
    } else {
        const auto width = read.length(source.exhaust_width, "width of the exhaust");
        const auto height = read.length(source.exhaust_height, "height of the exhaust");
        demand.exhaust = model::RectangularVent{width, height};
    }
    demand.exhaust_free_area = read.free_area(catalogue, source.exhaust_cover);
    demand.ratio = read.number(source.ratio, "intake to exhaust");
    demand.intake_free_area = read.free_area(catalogue, source.intake_cover);
    demand.count = read.whole_number(form.count, "openings");
    demand.height = read.length(form.height, vent_words(form, derived).each);
    demand.graduation = Length::from_nm(derived.resolved.shop.graduation);
    return demand;
}

}  // namespace

VentAnswer vent_answer(const VentForm& form,
                       const Derived& derived,
                       const model::Catalogue& catalogue) {
    VentAnswer answer;
    Reading read(derived);
    const auto demand = demand_of(form, derived, catalogue, read);
    if (answer.trouble = read.trouble(); !answer.trouble.empty()) return answer;
    const auto sizing = model::vent_sizing(demand);
    if (!sizing) {
        answer.trouble = engine::to_text(sizing.error());
        return answer;
    }
    answer.sizing = *sizing;
    const auto sheet = sheet_size_of(derived, form.frame, form.panel);
    if (!sheet) {
        answer.trouble = "the panel is not made yet; see what is said of it";
        return answer;
    }
    model::VentRow row{.count = demand.count,
                       .width = sizing->width,
                       .height = demand.height,
                       .gap = read.length(form.gap, "gap"),
                       .is_stacked = form.is_stacked,
                       .sheet = *sheet,
                       .graduation = demand.graduation};
    const auto words = vent_words(form, derived);
    for (std::size_t k = 0; k < 2; ++k) {
        row.lower_corner[k] = read.length_if_any(form.from[k], words.from[k]);
    }
    if (answer.trouble = read.trouble(); !answer.trouble.empty()) return answer;
    const auto openings = model::vent_openings(row);
    if (!openings) {
        answer.trouble = engine::to_text(openings.error());
        return answer;
    }
    answer.row = row;
    return answer;
}

}  // namespace editor
