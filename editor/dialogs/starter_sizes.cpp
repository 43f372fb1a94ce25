#include "editor/dialogs/starter_sizes.h"

#include "editor/dimension_values.h"
#include "editor/error_words.h"
#include "engine/measure/tape.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace editor {
namespace {

using engine::Length;

std::string numbered(std::string_view kind, std::size_t index) {
    return std::string(kind) + " " + std::to_string(index + 1);
}

// Every size of the form with its name; Form is const or not.
template <class Form, class Visit>
void visit_sizes(Form& form, Visit visit) {
    visit("width", form.width);
    visit("depth", form.depth);
    visit("height", form.height);
    if (form.kind == StarterKind::stepped) {
        visit("well height", form.well_height);
        visit("well depth", form.well_depth);
    }
    for (std::size_t i = 0; i < form.shelf_levels.size(); ++i) {
        visit(numbered("shelf", i), form.shelf_levels[i]);
    }
    for (std::size_t i = 0; i < form.dividers.size(); ++i) {
        visit(numbered("divider", i), form.dividers[i]);
    }
}

constexpr const char* place_name = "from the left";

std::string value_text(const engine::Quantity& quantity) {
    const engine::TapeStyle exact{
        .form = engine::TapeForm::millimetre, .decimals = 6, .with_unit = true};
    return formula_of(quantity, exact) +
           (quantity.kind == engine::QuantityKind::length ? " mm" : "");
}

Length rounded_down(Length length, Length step) {
    return Length::from_nm(length.nm() / step.nm() * step.nm());
}

}  // namespace

StarterSizes::StarterSizes(const StarterForm& form, const Derived& derived)
    : form_{form}, derived_{derived} {
    std::vector<std::string> names;
    visit_sizes(form, [&](const std::string& name, const std::string& text) {
        names.push_back(name);
        texts_[name] = text;
    });
    if (!derived.project->frames.empty()) {
        names.emplace_back(place_name);
        texts_[place_name] = form.beside;
    }
    std::vector<engine::NamedFormula> formulas;
    for (const auto& name : names) formulas.push_back({name, texts_.at(name)});
    // The form's own fields come first and serve the others; of the project only values are needed.
    std::vector<std::string> values;
    values.reserve(derived.project->dimensions.size());
    for (const auto& dimension : derived.project->dimensions) {
        const auto value = value_of(derived, dimension.name);
        if (!value) continue;
        values.push_back(value_text(*value));
        formulas.push_back({dimension.name, values.back(), dimension.kind});
    }
    const auto all = engine::evaluate_all(formulas, engine::bare_unit(derived.project->shown));
    for (std::size_t i = 0; i < names.size(); ++i) values_.emplace(names[i], all[i]);
}

std::optional<Length> StarterSizes::length(const std::string& name) const {
    const auto at = values_.find(name);
    if (at == values_.end() || !at->second) return std::nullopt;
    return at->second->length;
}

std::string StarterSizes::shown(Length length) const {
    return quantity_text({engine::QuantityKind::length, length, 0.0}, derived_.project->shown);
}

std::optional<std::string> StarterSizes::trouble(const std::string& name) const {
    const auto at = values_.find(name);
    if (at == values_.end()) return std::nullopt;
    const std::string& text = texts_.at(name);
    if (text.find_first_not_of(' ') == std::string::npos) return "a length is needed here";
    if (!at->second) return error_words(at->second.error(), text);
    const bool is_stepped = form_.kind == StarterKind::stepped;
    if (name.rfind("shelf ", 0) == 0) {
        return trouble_inside(name, "shelf", form_.shelf_levels.size(),
                              is_stepped ? "well height" : "", "height");
    }
    if (name.rfind("divider ", 0) == 0) {
        return trouble_inside(name, "divider", form_.dividers.size(), "", "width");
    }
    if (name == place_name) return std::nullopt;
    const Length value = at->second->length;
    if (value <= Length{}) return "the " + name + " must be more than nothing";
    for (const auto& [inner, outer] :
         {std::pair{"well height", "height"}, {"well depth", "depth"}}) {
        const auto whole = length(outer);
        if (name == inner && whole && value >= *whole) {
            return "the well must leave room: the " + std::string(outer) + " is " + shown(*whole);
        }
    }
    return std::nullopt;
}

std::optional<std::string> StarterSizes::trouble_inside(const std::string& name,
                                                        std::string_view kind,
                                                        std::size_t count,
                                                        const std::string& first,
                                                        const std::string& last) const {
    const Length value = *length(name);
    const bool is_shelf = kind == "shelf";
    const Length least = length(first).value_or(Length{});
    if (value <= least) {
        if (!is_shelf) return "a divider stands to the right of the left side, which is at 0";
        if (first.empty()) return "a shelf lies above the bottom, which is at 0";
        return "a shelf lies above the well, which is " + shown(least) + " high";
    }
    const auto most = length(last);
    if (most && value >= *most) {
        return (is_shelf ? "a shelf lies below the top, which is at "
                         : "a divider stands to the left of the right side, which is at ") +
               shown(*most);
    }
    for (std::size_t i = 0; i < count; ++i) {
        const std::string other = numbered(kind, i);
        if (other == name) break;  // the first of the two is as it should be
        if (length(other) == value) return other + " is there already";
    }
    return std::nullopt;
}

std::string StarterSizes::between(std::optional<Length> first,
                                  std::optional<Length> last,
                                  std::string_view kind,
                                  std::size_t count) const {
    if (!first || !last || *last <= *first) return {};
    std::vector<Length> places{*first, *last};
    for (std::size_t i = 0; i < count; ++i) {
        const auto place = length(numbered(kind, i));
        if (place && *place > *first && *place < *last) places.push_back(*place);
    }
    std::sort(places.begin(), places.end());
    std::size_t widest = 0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        if (places[i + 1] - places[i] > places[widest + 1] - places[widest]) widest = i;
    }
    const Length low = places[widest];
    const Length gap = places[widest + 1] - low;
    const Length middle = low + Length::from_nm(gap.nm() / 2);
    auto style = derived_.project->shown;
    const Length unit = Length::from_nm(is_metric(style) ? 10 * Length::nm_per_mm
                                                         : std::int64_t{Length::nm_per_inch});
    const Length step = gap >= unit * 4 ? unit : engine::tape_step(style);
    style.with_unit = true;
    const Length whole = rounded_down(middle, step);
    return engine::exact_text(whole > low ? whole : middle, style);
}

std::string StarterSizes::shelf_between() const {
    const bool is_stepped = form_.kind == StarterKind::stepped;
    return between(is_stepped ? length("well height") : Length{}, length("height"), "shelf",
                   form_.shelf_levels.size());
}

std::string StarterSizes::divider_between() const {
    return between(Length{}, length("width"), "divider", form_.dividers.size());
}

// ---- the names that the fields get --------------------------------------------------------------

namespace {

// The dimension that the starter made for a field: its own name or, where that was taken, one with
// the frame's name in front.
std::optional<std::string> made_for(const std::string& field,
                                    const std::string& frame,
                                    const model::Project& made,
                                    std::size_t first_new) {
    const std::string longer = frame + " " + field;
    for (std::size_t i = first_new; i < made.dimensions.size(); ++i) {
        const std::string& name = made.dimensions[i].name;
        if (name == field || name == longer || name.rfind(longer + " ", 0) == 0) return name;
    }
    return std::nullopt;
}

class Renaming {
public:
    Renaming(const StarterForm& form, const model::Project& trial, const std::string& stock) {
        StarterForm plain = form;
        visit_sizes(plain, [](const std::string&, std::string& text) { text = "1 in"; });
        const auto made = model::apply(trial, starter_edit(plain, stock));
        visit_sizes(form, [&](const std::string& name, const std::string& text) {
            texts_[name] = text;
            const auto dimension =
                made ? made_for(name, form.frame, *made, trial.dimensions.size()) : std::nullopt;
            if (dimension && engine::names_in(text).empty()) names_[name] = *dimension;
        });
    }

    // A field that becomes a dimension is called by its name; one that is a formula itself stands
    // there whole. `depth` ends a chain of fields that need each other.
    std::string renamed(std::string formula, int depth = 0) const {
        constexpr int deepest = 20;
        for (const auto& name : engine::names_in(formula)) {
            const auto text = texts_.find(name);
            if (text == texts_.end() || depth > deepest) continue;
            const auto known = names_.find(name);
            const std::string becomes = known != names_.end()
                                            ? known->second
                                            : "(" + renamed(text->second, depth + 1) + ")";
            formula = engine::with_name_replaced(formula, name, becomes);
        }
        return formula;
    }

private:
    std::map<std::string, std::string> texts_;
    std::map<std::string, std::string> names_;
};

}  // namespace

StarterForm with_dimension_names(const StarterForm& form,
                                 const model::Project& trial,
                                 const std::string& stock) {
    const Renaming renaming(form, trial, stock);
    StarterForm renamed = form;
    visit_sizes(renamed, [&](const std::string&, std::string& text) {
        text = renaming.renamed(std::move(text));
    });
    renamed.beside = renaming.renamed(form.beside);
    return renamed;
}

model::Edit starter_edit(const StarterForm& form, const std::string& stock) {
    const model::Place origin{form.beside.empty() ? "0" : form.beside, "0", "0"};
    if (form.kind != StarterKind::stepped) {
        return model::StartBoxFrame{form.frame,    stock,       form.width,
                                    form.depth,    form.height, form.shelf_levels,
                                    form.dividers, origin};
    }
    return model::StartSteppedFrame{
        form.frame,       stock,           form.width,        form.depth,    form.height,
        form.well_height, form.well_depth, form.shelf_levels, form.dividers, origin};
}

}  // namespace editor
